//! The host's preparation: what to buy, what to do in which order, what to be careful with.

mod marks;
mod paper;
pub mod printed;
pub mod schedule;
mod shopping;
mod tokens;
mod waiting;

use serde::Serialize;

use crate::diag::Level;
use crate::ids::PuzzleId;
use crate::kit::material::{Need, PrepStep, material};
use crate::kit::{Form, Kit, NoteKind, OwnStep, Place, Prop};
use schedule::{Work, schedule, tidied};
pub use shopping::{CautionLine, ShoppingLine};
pub(crate) use tokens::{CALLED as TOKENS, STICKER};

/// Minutes for printing and measuring, whatever the kit, and for cutting out one piece (estimates; common practice, no
/// source).
const PRINT_MINUTES: f64 = 10.0;
pub(crate) const CUT_MINUTES: f64 = 0.6;
/// Minutes for setting and testing one lock (estimate; common practice, no source).
const LOCK_MINUTES: f64 = 3.0;
/// Minutes for telling the helpers their words (estimate; common practice, no source).
const WORD_MINUTES: f64 = 3.0;
/// Minutes for filling and shutting one box, and for one spot (estimates; common practice, no source).
const PLACE_MINUTES: (f64, f64) = (3.0, 1.5);
/// Minutes for folding one sign (estimate; common practice, no source).
const FOLD_MINUTES: f64 = 0.5;
/// Minutes for the walk through the finished room (estimate; common practice, no source).
const WALK_MINUTES: f64 = 15.0;

/// The steps of one puzzle.
#[derive(Clone, Debug, PartialEq)]
pub struct PuzzleSteps {
    /// Which puzzle.
    pub puzzle: PuzzleId,
    /// Its title, for the shopping list.
    pub title: String,
    /// Its steps.
    pub steps: Vec<PrepStep>,
    /// Which kinds of a material these take: the material's id, and the kinds in words.
    pub kinds: Vec<(&'static str, String)>,
    /// How many pieces of it are cut out.
    pub pieces: usize,
}

/// What the host buys and does before the party.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PrepPlan {
    /// The tasks in the order of their start.
    pub tasks: Vec<Task>,
    /// What to have, sorted by what most homes lack first, then by name.
    pub shopping: Vec<ShoppingLine>,
    /// The cautions of exactly the materials in use.
    pub cautions: Vec<CautionLine>,
    /// Pencils that lie ready for one group of guests; none where no puzzle asks for any.
    pub pencils: usize,
    /// Minutes of hands in all.
    pub hands: f64,
    /// The minute in which all is done and dry, counted from the start.
    pub ready: f64,
    /// Minutes in which one person puts one group's room back for the next.
    pub again: f64,
    /// Whether no order of the tasks is shorter ([`schedule::schedule`]).
    pub exact: bool,
}

/// One task of the host. All minutes are estimates; the maker's label decides how long a thing must dry.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Task {
    /// The puzzle that it is for; none for what the whole kit needs, and for a prop that it prints.
    pub puzzle: Option<PuzzleId>,
    /// The group of the printed pieces that it handles, as in [`crate::face::Piece::group`]; empty where it is about none,
    /// or about all.
    pub pieces: String,
    /// What to do.
    pub what: String,
    /// What it takes.
    pub needs: Vec<Need>,
    /// The minute in which it starts.
    pub start: f64,
    /// Minutes of hands.
    pub hands: f64,
    /// Minutes of waiting afterwards, at least.
    pub wait: f64,
}

/// Plans the preparation of `kit` at a level, whose puzzles take these `steps`, for so many groups that play at once: each has
/// everything anew, so hands have that much more to do; what dries does so side by side.
///
/// Names are printed as they stand in `kit`: give it with its slots filled. Every puzzle's steps come after printing and cutting, and everything comes before the room is laid out. A
/// step that waits for itself, over others or not, is put at the end rather than lost.
#[must_use]
pub fn plan(kit: &Kit, level: Level, steps: &[PuzzleSteps], parties: u16) -> PrepPlan {
    let parties = parties.max(1);
    let (mut tasks, work) = listed(kit, level, steps, parties);
    // Tasks of the whole kit belong to no group, so each is a group of its own.
    let first_of = |task: &Task, at: usize| match &task.puzzle {
        Some(id) => tasks.iter().position(|other| other.puzzle.as_ref() == Some(id)).unwrap_or(at),
        None => at,
    };
    let groups: Vec<usize> = tasks.iter().enumerate().map(|(at, task)| first_of(task, at)).collect();
    let order = tidied(&work, &groups, &schedule(&work));
    let mut end = if order.ready.is_finite() { order.ready } else { 0.0 };
    for (task, start) in tasks.iter_mut().zip(&order.starts) {
        task.start = start.unwrap_or(end);
        if start.is_none() {
            end += task.hands + task.wait;
        }
    }
    tasks.sort_by(|a, b| a.start.total_cmp(&b.start));
    PrepPlan {
        hands: tasks.iter().map(|task| task.hands).sum(),
        pencils: shopping::ready(kit, level, steps),
        again: again(kit),
        ready: end,
        exact: order.exact,
        shopping: shopping::shopping(kit, level, steps, parties),
        cautions: shopping::cautions(kit, level, steps),
        tasks,
    }
}

/// The step that prints and cuts out everything but the tokens, which have steps of their own.
pub const PRINT: &str = "Print the sheets at actual size, each on the paper that its head names, measure the check bar, and \
    cut all pieces but the hint tokens out along their fine outer lines, from mark to mark.";

fn listed(kit: &Kit, level: Level, steps: &[PuzzleSteps], groups: u16) -> (Vec<Task>, Vec<Work>) {
    let mut list = List::default();
    let print = list.add(None, PRINT.into(), PRINT_MINUTES + CUT_MINUTES * count(cut_out(kit, steps)));
    let set = waiting::set(kit).map(|(what, locks)| list.add(None, what, LOCK_MINUTES * count(locks)));
    if let Some(what) = waiting::told(kit) {
        let at = list.add(None, what, WORD_MINUTES);
        list.after[at] = vec![print];
    }
    let first = list.tasks.len();
    let made = tokens::steps(kit, level);
    for step in &made {
        let at = list.add(None, step.what.clone(), step.hands);
        list.tasks[at].pieces = "tokens".into();
        list.tasks[at].needs.clone_from(&step.needs);
        list.tasks[at].wait = minutes(step.wait);
        let before = made.iter().position(|other| step.after.contains(&other.key)).map(|other| first + other);
        list.after[at] = before.into_iter().chain([print]).collect();
    }
    for (step, pieces) in marks::steps(kit) {
        let at = list.add(None, step.what, step.hands);
        list.tasks[at].pieces = pieces.into();
        list.tasks[at].needs = step.needs;
        list.after[at] = vec![print];
        // Locks that look alike are told apart by their tags while they are set.
        if let Some(set) = set.filter(|_| pieces == marks::TAGS) {
            list.after[set].push(at);
        }
    }
    // As each says below itself, until it is cut out.
    for sign in kit.notes.iter().filter(|note| note.kind == NoteKind::Sign) {
        let title = sign.title.trim();
        let called = if title.is_empty() { "The sign".to_owned() } else { format!("Sign “{title}”") };
        let what = format!("{called}: fold it back on the dashed line, so that it stands.");
        let at = list.add(None, what, FOLD_MINUTES);
        list.after[at] = vec![print];
    }
    for own in &kit.preparation {
        list.own(None, own, Vec::new());
    }
    // What is only printed and cut out is done with all the rest.
    let mut closed: Vec<(usize, &Place)> = Vec::new();
    let named = |prop: &Prop| Prop { name: kit.prop_name(prop).to_owned(), ..prop.clone() };
    for (prop, step) in kit.props.iter().filter_map(|prop| Some((prop, printed::step(&named(prop))?))) {
        if step.what.is_empty() {
            continue;
        }
        let at = list.add(None, step.what, step.hands);
        list.tasks[at].pieces = format!("prop-{}", prop.id);
        list.tasks[at].needs = step.needs;
        list.tasks[at].wait = minutes(step.wait);
        list.after[at] = vec![print];
        if prop.printed.as_ref().is_some_and(|spec| matches!(spec.form, Form::Band | Form::Cover)) {
            closed.push((at, &prop.place));
        }
    }
    for group in steps {
        let first = list.tasks.len();
        let steps: Vec<&PrepStep> = group.steps.iter().filter(|step| !step.what.is_empty()).collect();
        let number = |key: &str| steps.iter().position(|step| step.key == key).map(|at| first + at);
        for step in &steps {
            let at = list.add(Some(&group.puzzle), step.what.clone(), step.hands);
            list.tasks[at].needs.clone_from(&step.needs);
            list.tasks[at].wait = minutes(step.wait);
            list.after[at] = step.after.iter().filter_map(|key| number(key)).chain([print]).collect();
        }
        let before: Vec<usize> = (first..list.tasks.len()).chain([print]).collect();
        for own in kit.puzzle(&group.puzzle).map_or(&[][..], |puzzle| &puzzle.preparation) {
            list.own(Some(&group.puzzle), own, before.clone());
        }
    }
    // A band is closed round a thing, and a jacket put on it, when the puzzles of that place are done with it.
    for (at, place) in closed {
        let here = |id: &PuzzleId| kit.puzzle(id).is_some_and(|puzzle| puzzle.parts.values().any(|of| of == place));
        let before = list.tasks.iter().enumerate().filter(|(_, task)| task.puzzle.as_ref().is_some_and(here));
        let before: Vec<usize> = before.map(|(other, _)| other).collect();
        list.after[at].extend(before);
    }
    let all: Vec<usize> = (0..list.tasks.len()).collect();
    let order = if kit.nests() { " from the innermost outwards" } else { "" };
    let what = format!("Lay the pieces at their spots, fill the boxes{order}, and lock them.");
    let (per_box, per_spot) = PLACE_MINUTES;
    let lay = list.add(None, what, per_box * count(kit.boxes.len()) + per_spot * count(kit.spots.len()));
    list.after[lay] = all;
    let what = "Walk through the evening with the host guide in hand: every piece in its place, every lock tried.";
    let walk = list.add(None, what.into(), WALK_MINUTES);
    list.after[walk] = vec![lay];
    for task in &mut list.tasks {
        task.hands *= f64::from(groups);
    }
    let work =
        list.tasks.iter().zip(list.after).map(|(t, after)| Work { hands: t.hands, wait: t.wait, after }).collect();
    (list.tasks, work)
}

/// Tasks with what each waits for.
#[derive(Default)]
struct List {
    tasks: Vec<Task>,
    after: Vec<Vec<usize>>,
}

impl List {
    fn add(&mut self, puzzle: Option<&PuzzleId>, what: String, hands: f64) -> usize {
        let puzzle = puzzle.cloned();
        let pieces = puzzle.as_ref().map(ToString::to_string).unwrap_or_default();
        self.tasks.push(Task { puzzle, pieces, what, needs: Vec::new(), start: 0.0, hands: minutes(hands), wait: 0.0 });
        self.after.push(Vec::new());
        self.tasks.len() - 1
    }

    /// Adds a step of the author's own.
    fn own(&mut self, puzzle: Option<&PuzzleId>, step: &OwnStep, after: Vec<usize>) {
        if step.what.trim().is_empty() {
            return;
        }
        let at = self.add(puzzle, step.what.trim().to_owned(), step.minutes);
        let need = |(name, amount): (&String, &f64)| {
            material(name).map(|material| Need { material: material.id, amount: *amount })
        };
        self.tasks[at].needs = step.takes.iter().filter_map(need).collect();
        self.tasks[at].wait = minutes(step.wait);
        self.after[at] = after;
    }
}

/// Minutes for putting a room back: each lock is dialled and tested, each box and spot filled as before, and one thing
/// done for each puzzle, such as erasing (estimates; common practice, no source).
fn again(kit: &Kit) -> f64 {
    let wheels = kit.locks.iter().filter(|lock| lock.kind.wheels().is_some()).count();
    let (per_box, per_spot) = PLACE_MINUTES;
    count(wheels)
        + per_box * count(kit.boxes.len())
        + per_spot * count(kit.spots.len())
        + 1.5 * count(kit.puzzles.len())
}

/// How many pieces are cut out with all the rest: those of the puzzles, the notes, labels and locks' tags, and what props
/// are printed as.
fn cut_out(kit: &Kit, steps: &[PuzzleSteps]) -> usize {
    let puzzles: usize = steps.iter().map(|group| group.pieces).sum();
    let labels = kit.boxes.iter().filter(|item| item.label.is_some()).count();
    let props: usize = kit.props.iter().map(printed::pieces).sum();
    puzzles + labels + kit.tagged().count() + kit.notes.len() + props
}

/// Nothing takes less than no time.
fn minutes(value: f64) -> f64 {
    if value.is_finite() { value.max(0.0) } else { 0.0 }
}

#[expect(clippy::cast_precision_loss, reason = "kits are bounded far below 2^52 things")]
fn count(n: usize) -> f64 {
    n as f64
}
