use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::prep::{PuzzleSteps, plan};

check!(
    /// ## What it does
    /// Notes a preparation that takes longer, drying included, than the minutes that the kit gives the host
    /// (`prep_minutes`). A kit that does not say how long the host has is not looked at.
    ///
    /// ## Why it matters at the table
    /// Ink that is still wet smears, and glue that is still soft lets go in a guest's hand.
    ///
    /// ## How to mend
    /// Give the host more time in the kit's facts, or choose puzzles with less to dry. The maker's label decides how
    /// long a thing must dry.
    DryTimeLate, "dry-time-late", Notes, "the preparation takes longer than the host has",
    "ink that is still wet smears, and glue that is still soft lets go", run
);

/// Minutes of an hour.
const HOUR: f64 = 60.0;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let Some(has) = facts.kit.prep_minutes else { return };
    let steps: Vec<PuzzleSteps> = facts
        .party
        .puzzles
        .iter()
        .map(|laid| PuzzleSteps { puzzle: laid.id.clone(), title: String::new(), steps: laid.prep.clone() })
        .collect();
    let plan = plan(facts.kit, &steps, 1);
    if plan.ready <= f64::from(has) {
        return;
    }
    let message = format!(
        "the preparation is done and dry after {}, {} of them with hands, and the host has {}",
        time(plan.ready),
        time(plan.hands),
        time(f64::from(has))
    );
    let mut draft = Draft::new(Anchor::Kit, message).help("give the host more time, or choose puzzles with less to dry");
    let longest = plan.tasks.iter().max_by(|a, b| a.wait.total_cmp(&b.wait)).filter(|task| task.wait > 0.0);
    if let Some(task) = longest {
        draft = draft.help(format!("the longest wait is {}, after: {}", time(task.wait), facts.party.say(&task.what)));
    }
    sink.add(draft);
}

/// Minutes in words, from two hours on in hours.
fn time(minutes: f64) -> String {
    if minutes < 2.0 * HOUR {
        return format!("{minutes:.0} minutes");
    }
    format!("{:.1} hours", minutes / HOUR).replace(".0 ", " ")
}
