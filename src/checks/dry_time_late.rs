use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::prep::{Task, plan};

check!(
    /// ## What it does
    /// Notes a preparation that takes longer, drying included, than the minutes that the kit gives the host
    /// (`prep_minutes`). A kit that does not say how long the host has is not looked at.
    ///
    /// ## Why it matters at the table
    /// Ink that is still wet smears, and glue that is still soft lets go in a guest's hand; where nothing has to dry, the host
    /// is still at work when the guests come.
    ///
    /// ## How to mend
    /// Give the host more time in the kit's facts, or choose puzzles with less to dry. The finding names the steps that
    /// take longest; where nothing dries, it says so. The maker's label decides how
    /// long a thing must dry.
    DryTimeLate, "dry-time-late", Notes, "the preparation takes longer than the host has",
    "ink that is still wet smears, and glue that is still soft lets go", run
);

/// Minutes of an hour.
const HOUR: f64 = 60.0;
/// Steps that are named, the longest first.
const LONGEST: usize = 4;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let Some(has) = facts.kit.prep_minutes else { return };
    let plan = plan(facts.kit, facts.party.level, &facts.party.prep_steps(), 1);
    if plan.ready <= f64::from(has) {
        return;
    }
    // Waiting is to blame only where the work alone would be done in time.
    let dries = plan.hands <= f64::from(has);
    let has = time(f64::from(has));
    let draft = if dries {
        let (ready, hands) = (time(plan.ready), time(plan.hands));
        let message = format!("the preparation is done and dry after {ready}, {hands} of them with hands, and the host has {has}");
        Draft::new(Anchor::Kit, message).help("give the host more time, or choose puzzles with less to dry")
    } else {
        let message = format!("the preparation takes {} of work alone, and the host has {has}", time(plan.hands));
        Draft::new(Anchor::Kit, message)
            .why("the host is still cutting when the guests ring")
            .help("give the host more time (`prep_minutes`), or choose puzzles with less to cut and to make")
    };
    // What a host would look at first: the steps that take longest, waiting or at work.
    let mut tasks: Vec<&Task> = plan.tasks.iter().collect();
    tasks.sort_by(|a, b| (b.hands + b.wait).total_cmp(&(a.hands + a.wait)));
    let told = tasks.iter().take(LONGEST).map(|task| {
        let what = facts.party.say(&task.what);
        let what = what.split_inclusive(". ").next().unwrap_or_default().trim_end_matches(['.', ' ']);
        let wait = if task.wait > 0.0 { format!(", then a wait of {}", time(task.wait)) } else { String::new() };
        format!("{} with hands{wait}: {what}{}", time(task.hands), whose(facts, task))
    });
    let told: Vec<String> = told.collect();
    sink.add(told.into_iter().fold(draft, |draft, line| draft.help(line)));
}

/// For which puzzle a step is.
fn whose(facts: &Facts<'_>, task: &Task) -> String {
    let puzzle = task.puzzle.as_ref().and_then(|id| facts.party.script.puzzle(id));
    puzzle.map_or_else(String::new, |puzzle| format!(" (\"{}\")", puzzle.title))
}

/// Minutes in words, from two hours on in hours.
fn time(minutes: f64) -> String {
    if minutes < 2.0 * HOUR {
        return format!("{minutes:.0} minutes");
    }
    format!("{:.1} hours", minutes / HOUR).replace(".0 ", " ")
}
