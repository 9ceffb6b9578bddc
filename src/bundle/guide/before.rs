use crate::script::capital;
use serde::Serialize;

use super::words::{Pointed, amount, list, minutes, pointed, sentence, shown, unit};
use super::{Source, spoken};
use crate::kit::{BoxDef, Lock, LockKind};

/// A line of the shopping list.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Item {
    name: String,
    amount: String,
    size: String,
    stand_in: String,
    at_home: bool,
    used_up: bool,
}

/// The preparation as bars over time.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Chart {
    /// Minutes that the whole takes.
    ready: f64,
    rows: Vec<ChartRow>,
}

/// What one puzzle or one thing takes, in a row of the chart.
#[derive(Clone, Debug, Serialize)]
struct ChartRow {
    name: String,
    bars: Vec<Bar>,
}

/// A task in the chart; all in minutes.
#[derive(Clone, Debug, Serialize)]
struct Bar {
    start: f64,
    hands: f64,
    wait: f64,
}

/// A step of the preparation.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Task {
    start: String,
    about: String,
    what: String,
    hands: String,
    wait: String,
}

/// A row of the lock table.
#[derive(Clone, Debug, Serialize)]
pub(super) struct LockRow {
    mark: String,
    name: String,
    hangs: String,
    kind: String,
    code: String,
    /// Whether the code is a word or a place rather than symbols to dial.
    worded: bool,
    set: String,
    /// Whether it is set and opened twice before the party; a word that is said is not.
    tested: bool,
}

/// The facts under the title.
pub(in crate::bundle) fn facts(source: &Source<'_>) -> Vec<(String, String)> {
    let kit = &source.opened.kit;
    let span = |(least, most): (u8, u8)| if least == most { format!("{least}") } else { format!("{least} to {most}") };
    let ages = match kit.ages {
        // Nobody is kept out at the upper end; such a number only says so.
        (least, most) if most >= 90 => format!("from {least}"),
        ages => span(ages),
    };
    vec![
        ("Guests".into(), span(kit.players)),
        ("Ages".into(), ages),
        ("Play".into(), format!("about {}", minutes(f64::from(kit.minutes)))),
        ("Prepare".into(), format!("{} of hands", minutes(source.prep.hands))),
    ]
}

/// The whole evening in a handful of lines, for a host who has a minute.
pub(super) fn minute(source: &Source<'_>) -> Vec<Pointed> {
    let kit = &source.opened.kit;
    let longest = source.prep.tasks.iter().map(|task| task.wait).fold(0.0, f64::max);
    let mut lines =
        vec![pointed("Print the players’ file, the tokens and this guide at 100 %. Cut. Find what you need", "needs")];
    if longest > 0.0 {
        let wait = minutes(longest);
        lines.push(pointed(format!("Begin with what has to dry or set: the longest wait is {wait}"), "prep"));
    }
    if let Some(set) = spoken::set(kit) {
        lines.push(pointed(set, "locks"));
    }
    lines.push(pointed("Fill the boxes from the inside out, and lay out the rest", "setup"));
    let letter = if kit.letter.place.is_some() { "Point out the letter" } else { "Read the letter aloud" };
    lines.push(pointed(format!("{letter}, say what is in play, and start the clock"), "say"));
    let quiet = kit.levels.of(source.party.level).quiet_minutes;
    lines.push(pointed(
        format!("After {} quiet minutes offer a token of the lock they are stuck on, one dot first", quiet.max(1)),
        "tokens",
    ));
    let end = kit.box_def(&kit.finish.opens).map_or_else(|| "the last box".into(), |item| source.say(&item.name));
    lines.push(pointed(format!("They have won when {end} is open. The answers, with the way to each"), "answers"));
    lines
}

/// The shopping list.
pub(super) fn shopping(source: &Source<'_>) -> Vec<Item> {
    source
        .prep
        .shopping
        .iter()
        .map(|line| Item {
            name: item_name(source, line),
            amount: format!("{} {}", amount(line.amount), unit(line.unit, line.amount)),
            size: sentence(&source.say(&line.size)),
            stand_in: line.stand_in.to_owned(),
            at_home: line.at_home,
            used_up: line.used_up,
        })
        .collect()
}

/// What a line of the list is called; a box of a kind is told apart from the others by its name.
fn item_name(source: &Source<'_>, line: &crate::prep::ShoppingLine) -> String {
    let name = capital(&source.say(&line.name));
    if !matches!(line.material, "chest" | "small-box") || line.for_what.is_empty() {
        return name;
    }
    let boxes: Vec<String> = line.for_what.iter().map(|of| source.say(of)).collect();
    format!("{name}: {}", list(&boxes))
}

/// How long the preparation takes.
pub(super) fn prep_note(source: &Source<'_>) -> String {
    let (hands, ready) = (minutes(source.prep.hands), minutes(source.prep.ready));
    let long = if hands == ready {
        format!("One person needs {hands}, without a wait")
    } else {
        format!("One person has {hands} of work to do, and is ready after {ready}")
    };
    format!(
        "{long}. What has to dry comes first, so that it dries while you go on. Times are estimates; the maker’s label \
         decides how long a thing dries."
    )
}

/// The steps in order.
pub(super) fn prep(source: &Source<'_>) -> Vec<Task> {
    source
        .prep
        .tasks
        .iter()
        .map(|task| Task {
            start: format!("{} h {:02}", (task.start / 60.0).floor(), (task.start % 60.0).floor()),
            about: about(source, task),
            what: sentence(&task.what),
            hands: minutes(task.hands),
            wait: if task.wait > 0.0 { minutes(task.wait) } else { "–".into() },
        })
        .collect()
}

/// The same steps as bars: one row for each puzzle and each thing, in the order in which they are begun.
pub(super) fn chart(source: &Source<'_>) -> Chart {
    let mut rows: Vec<ChartRow> = Vec::new();
    for task in &source.prep.tasks {
        let puzzle = task.puzzle.as_ref().and_then(|id| source.party.script.puzzle(id));
        let name = puzzle.map_or_else(|| subject(&task.what), |puzzle| capital(&puzzle.title));
        let bar = Bar { start: task.start, hands: task.hands, wait: task.wait };
        match rows.iter_mut().find(|row| row.name == name) {
            Some(row) => row.bars.push(bar),
            None => rows.push(ChartRow { name, bars: vec![bar] }),
        }
    }
    let bars = rows.iter().flat_map(|row| &row.bars);
    let ready = bars.map(|bar| bar.start + bar.hands + bar.wait).fold(source.prep.ready, f64::max);
    Chart { ready, rows }
}

/// What a step is about: its words up to the first stop.
fn subject(what: &str) -> String {
    let end = what.find([',', ':', ';']).or_else(|| what.find(". ")).unwrap_or(what.len());
    capital(what.get(..end).unwrap_or(what).trim().trim_end_matches('.'))
}

/// The lock table, box by box.
pub(super) fn locks(source: &Source<'_>) -> Vec<LockRow> {
    let kit = &source.opened.kit;
    let mut order: Vec<&Lock> = kit.boxes.iter().flat_map(|item| &item.locks).filter_map(|id| kit.lock(id)).collect();
    let loose: Vec<&Lock> = kit.locks.iter().filter(|lock| kit.box_of(&lock.id).is_none()).collect();
    order.extend(loose);
    order.iter().map(|lock| row(source, lock)).collect()
}

fn row(source: &Source<'_>, lock: &Lock) -> LockRow {
    let kit = &source.opened.kit;
    let hangs = kit.box_of(&lock.id).map_or_else(|| "on no box".to_owned(), |item| hangs(source, item, lock));
    let laid = kit.puzzle_of(&lock.id).and_then(|puzzle| source.party.puzzle(&puzzle.id));
    let worded = matches!(lock.kind, LockKind::Key | LockKind::Spoken);
    LockRow {
        mark: lock.mark.clone(),
        name: capital(&source.say(&lock.name)),
        hangs,
        kind: lock.kind.describe(),
        code: laid.map_or_else(|| "–".to_owned(), |laid| shown(&lock.kind, &laid.answer)),
        worded,
        set: if lock.how_to_set.trim().is_empty() {
            how_to_set(&lock.kind).to_owned()
        } else {
            sentence(&source.say(&lock.how_to_set))
        },
        tested: lock.kind != LockKind::Spoken,
    }
}

fn hangs(source: &Source<'_>, item: &BoxDef, lock: &Lock) -> String {
    let name = source.say(&item.name);
    match (item.hasp, lock.hole) {
        (true, hole) if hole > 0 => format!("hasp of {name}, hole\u{a0}{hole}"),
        (true, _) => format!("hasp of {name}"),
        _ if lock.kind == LockKind::Spoken => format!("said for {name}"),
        _ => format!("on {name}"),
    }
}

/// What holds for most locks of a kind (common practice, no source); the maker's sheet decides.
const fn how_to_set(kind: &LockKind) -> &'static str {
    match kind {
        LockKind::Digits(_) | LockKind::Letters(_) => {
            "With the shackle open, by the maker’s sheet; then scramble all wheels."
        }
        LockKind::Directions(_) => "By the maker’s sheet. Before each try the shackle is squeezed twice to clear it.",
        LockKind::Key => "Nothing to set. Hide one key as below; keep the spare.",
        LockKind::Spoken => "Nothing to set. Open the box when you hear it.",
    }
}

/// Which lock or thing a step is for.
fn about(source: &Source<'_>, task: &crate::prep::Task) -> String {
    let kit = &source.opened.kit;
    let Some(puzzle) = task.puzzle.as_ref().and_then(|id| source.party.script.puzzle(id)) else {
        return String::new();
    };
    let lock = kit.puzzle(&puzzle.id).and_then(|puzzle| kit.lock(&puzzle.opens));
    let marked = lock.map(|lock| lock.mark.clone()).filter(|mark| !mark.is_empty());
    match marked {
        Some(mark) => format!("{} ({mark})", capital(&puzzle.title)),
        None => capital(&puzzle.title),
    }
}
