use crate::script::capital;
use serde::Serialize;

use super::words::{Pointed, amount, as_digits, is_told, list, minutes, pointed, pushes, sentence, shown, unit};
use super::{Source, sheets, sizes, spoken};
use crate::face::Stock;
use crate::kit::{BoxDef, Lock, LockKind};
use crate::prep::ShoppingLine;

/// A line of the shopping list.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Item {
    name: String,
    amount: String,
    /// Sheets, to which this guide's own pages are added; then there is no other amount.
    sheets: Option<f64>,
    size: String,
    stand_in: String,
    at_home: bool,
    used_up: bool,
    /// The puzzles that it is for.
    of: String,
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
    /// On which sheets the pieces of this step lie.
    sheets: String,
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
    /// A row of pushes in words; empty where it is none.
    pushes: String,
    /// Whether the code is told in a sentence, as where a key lies.
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
        ("Play".into(), format!("about {}", minutes(f64::from(kit.minutes_at(source.party.level))))),
        ("Prepare".into(), format!("{} of hands", minutes(source.prep.hands))),
    ]
}

/// The whole evening in a handful of lines, for a host who has a minute.
pub(super) fn minute(source: &Source<'_>) -> Vec<Pointed> {
    let kit = &source.opened.kit;
    let longest = source.prep.tasks.iter().map(|task| task.wait).fold(0.0, f64::max);
    let print =
        format!("Print {} at 100 %, each sheet on the paper that its head names. Cut. Find what you need", all(source));
    let mut lines = vec![pointed(print, "needs")];
    if longest > 0.0 {
        let wait = minutes(longest);
        lines.push(pointed(format!("Do early what has to dry or set: the longest wait is {wait}"), "prep"));
    }
    if let Some(set) = spoken::set(kit) {
        lines.push(pointed(set, "locks"));
    }
    let order = if kit.nests() { " from the inside out" } else { "" };
    lines.push(pointed(format!("Fill the boxes{order}, and lay out the rest"), "setup"));
    let letter = if kit.letter.place.is_some() { "Point out the letter" } else { "Read the letter aloud" };
    lines.push(pointed(format!("{letter}, say what is in play, and note the time"), "say"));
    let rules = kit.levels.of(source.party.level);
    let dots = match rules.open_steps {
        0 => Some("one dot first"),
        1 => Some("two dots first: those with one lie open"),
        2 => Some("three dots: the others lie open"),
        _ => None,
    };
    if let Some(dots) = dots {
        let quiet = rules.quiet_minutes.max(1);
        lines.push(pointed(
            format!("After {quiet} quiet minutes offer a token of the lock they are stuck on, {dots}"),
            "tokens",
        ));
    }
    let end = kit.box_def(&kit.finish.opens).map_or_else(|| "the last box".into(), |item| source.say(&item.name));
    lines.push(pointed(format!("They have won when {end} is open. The answers, with the way to each"), "answers"));
    lines
}

/// All that is printed, in words.
fn all(source: &Source<'_>) -> String {
    let of = |file: &&crate::bundle::manifest::Made| match file.audience {
        "players" => "the guests’ sheets",
        "hints" => "the tokens",
        _ => "the host’s sheets",
    };
    let mut words: Vec<String> = source.files.iter().map(|file| of(file).to_owned()).collect();
    words.push("this guide".to_owned());
    let count = if words.len() > 1 { format!("all {} files: ", words.len()) } else { String::new() };
    format!("{count}{}", list(&words))
}

/// The shopping list: each box in a line of its own, with how large it must be.
pub(super) fn shopping(source: &Source<'_>) -> Vec<Item> {
    let kit = &source.opened.kit;
    let boxes: Vec<(String, &BoxDef)> = kit.boxes.iter().map(|item| (source.say(&item.name), item)).collect();
    let own = |line: &ShoppingLine| {
        matches!(line.material, "chest" | "small-box")
            || (line.material.is_empty() && boxes.iter().any(|(name, _)| *name == source.say(&line.name)))
    };
    let mut items = Vec::new();
    for line in &source.prep.shopping {
        if !own(line) {
            items.push(item(source, line));
            continue;
        }
        let meant = |(name, item): &&(String, &BoxDef)| {
            line.for_what.iter().any(|of| source.say(of) == *name || *of == item.name)
        };
        items.extend(boxes.iter().filter(meant).map(|(name, of)| a_box(source, line, name, of)));
    }
    items
}

/// A line of the list for a box.
fn a_box(source: &Source<'_>, line: &ShoppingLine, name: &str, of: &BoxDef) -> Item {
    let sizes = [source.say(line.size.as_str()), sizes::inside(source, of)];
    // The list's size of an envelope is what will do as it.
    let size: Vec<String> =
        sizes.into_iter().skip(usize::from(line.material.is_empty())).filter(|size| !size.is_empty()).collect();
    let about = source.say(&of.about);
    let what = if line.material.is_empty() { String::new() } else { format!(": {}", source.say(&line.name)) };
    Item {
        name: format!("{}{what}", capital(name)),
        amount: format!("{} {}", source.groups.max(1), unit("piece", f64::from(source.groups))),
        sheets: None,
        size: sentence(&size.join("; ")),
        stand_in: sentence(if about.trim().is_empty() { line.stand_in } else { &about }),
        at_home: line.at_home,
        used_up: false,
        of: String::new(),
    }
}

fn item(source: &Source<'_>, line: &ShoppingLine) -> Item {
    let plain = line.material == Stock::Plain.material() && !line.guests;
    let name = source.say(&line.name);
    Item {
        // A thing that guests find is named once, where its name says what it is.
        name: capital(name.split_once(": ").filter(|_| line.guests).map_or(name.as_str(), |(what, own)| {
            let what = what.trim_end_matches(" for the guests");
            if own.to_lowercase().contains(&what.to_lowercase()) { own } else { name.as_str() }
        })),
        amount: format!("{} {}", amount(line.amount), unit(line.unit, line.amount)),
        sheets: plain.then_some(line.amount),
        size: sentence(&size(source, line)),
        stand_in: sentence(&stand_in(source, line)),
        at_home: line.at_home,
        used_up: line.used_up,
        of: of(source, line),
    }
}

/// For which puzzles a thing is bought, where these are few and nothing else takes it; empty elsewhere.
fn of(source: &Source<'_>, line: &ShoppingLine) -> String {
    let title = |name: &String| {
        let texts = &source.party.script.puzzles;
        texts.iter().find(|text| text.title == *name).map(|text| format!("“{}”", text.title))
    };
    let titles: Option<Vec<String>> = line.for_what.iter().map(title).collect();
    titles.filter(|titles| (1..=2).contains(&titles.len())).map(|titles| list(&titles)).unwrap_or_default()
}

/// The locks of the kit of one kind, with their answers.
fn answers<'a>(source: &'a Source<'_>, of: fn(&LockKind) -> bool) -> impl Iterator<Item = (&'a Lock, &'a str)> {
    let kit = &source.opened.kit;
    kit.locks.iter().filter(move |lock| of(&lock.kind)).filter_map(|lock| {
        let puzzle = kit.puzzle_of(&lock.id)?;
        Some((lock, source.party.puzzle(&puzzle.id)?.answer.as_str()))
    })
}

/// The size that matters; of a lock with letters what its wheels must show.
fn size(source: &Source<'_>, line: &ShoppingLine) -> String {
    if line.material != "letter-padlock" {
        return source.say(&line.size);
    }
    let spelt = answers(source, |kind| matches!(kind, LockKind::Letters(_))).map(|(lock, answer)| {
        let letters: Vec<String> = shown(&lock.kind, answer).chars().map(String::from).collect();
        format!("{} wheels that can show {} in this order", letters.len(), letters.join("\u{a0}"))
    });
    let spelt: Vec<String> = spelt.collect();
    let rest = line.size.split_once(';').map_or("", |(_, rest)| rest);
    if spelt.is_empty() { line.size.clone() } else { format!("{};{rest}", spelt.join("; ")) }
}

/// What will do instead; of a lock that is pushed with the very digits.
fn stand_in(source: &Source<'_>, line: &ShoppingLine) -> String {
    if line.material != "direction-padlock" {
        return line.stand_in.to_owned();
    }
    let told = answers(source, |kind| matches!(kind, LockKind::Directions(_)))
        .map(|(_, answer)| format!("{} is then {}", answer.to_uppercase(), as_digits(answer)));
    let told: Vec<String> = told.collect();
    if told.is_empty() { line.stand_in.to_owned() } else { format!("{} {}", sentence(line.stand_in), told.join(", ")) }
}

/// How long the preparation takes.
pub(super) fn prep_note(source: &Source<'_>) -> String {
    let (hands, ready) = (minutes(source.prep.hands), minutes(source.prep.ready));
    let long = if hands == ready {
        format!("One person needs {hands}, without a wait")
    } else {
        format!("One person has {hands} of work to do, and is ready after {ready}")
    };
    let dry = if source.prep.tasks.iter().any(|task| task.wait > 0.0) {
        " What has to dry is done while other work is left; the maker’s label decides how long a thing dries."
    } else {
        ""
    };
    format!("{long}. Times are estimates.{dry}")
}

/// The steps in order. Starts and minutes are rounded together, so that they add up as printed.
pub(super) fn prep(source: &Source<'_>) -> Vec<Task> {
    source
        .prep
        .tasks
        .iter()
        .map(|task| {
            let (about, on) = (about(source, task), on_sheets(source, task));
            let (start, end) = (task.start.round(), (task.start + task.hands).round());
            Task {
                start: format!("{} h {:02}", (start / 60.0).floor(), start % 60.0),
                sheets: if about.is_empty() { capital(&on) } else { on },
                about,
                what: sentence(&task.what),
                hands: if end > start { minutes(end - start) } else { "at once".into() },
                wait: if task.wait > 0.0 { minutes(task.wait) } else { "–".into() },
            }
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
    let worded = laid.is_some_and(|laid| is_told(&lock.kind, &laid.answer));
    LockRow {
        mark: lock.mark.clone(),
        name: capital(&source.say(&lock.name)),
        hangs,
        kind: lock.kind.describe(),
        code: laid.map_or_else(|| "–".to_owned(), |laid| shown(&lock.kind, &laid.answer)),
        pushes: laid.and_then(|laid| pushes(&lock.kind, &laid.answer)).unwrap_or_default(),
        worded,
        set: if lock.how_to_set.trim().is_empty() {
            how_to_set(&lock.kind).to_owned()
        } else {
            sentence(beyond_nothing(&source.say(&lock.how_to_set)))
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

/// What is to be done, without the words that nothing is: the kind of the lock says so already.
fn beyond_nothing(said: &str) -> &str {
    let rest = said.trim().strip_prefix("Nothing to set").and_then(|rest| rest.strip_prefix([':', '.', ',', ';']));
    rest.map(str::trim).filter(|rest| !rest.is_empty()).unwrap_or(said)
}

/// What holds for most locks of a kind (common practice, no source); the maker's sheet decides.
const fn how_to_set(kind: &LockKind) -> &'static str {
    match kind {
        LockKind::Digits(_) | LockKind::Letters(_) => {
            "With the shackle open, by the maker’s sheet; then scramble all wheels."
        }
        LockKind::Directions(_) => "By the maker’s sheet. Before each try the shackle is squeezed twice to clear it.",
        LockKind::Key => "Hide one key as below; keep the spare.",
        LockKind::Spoken => "Open the box when you hear it.",
    }
}

/// On which sheets the pieces of a step lie; of the step that prints them, which go on which paper.
fn on_sheets(source: &Source<'_>, task: &crate::prep::Task) -> String {
    if task.what == crate::prep::PRINT {
        return sheets::papers(source);
    }
    if task.pieces.is_empty() { String::new() } else { sheets::of_group(source, &task.pieces) }
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
