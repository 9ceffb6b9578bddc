use std::collections::{BTreeMap, BTreeSet};

use super::belief::Belief;
use super::chance::LogNormal;
use super::estimate::Estimate;
use super::habits::Habits;
use crate::diag::{Hinted, Level, Step, Trouble};
use crate::flow::net::{Net, Where};
use crate::flow::{self, Parts};
use crate::ids::{BoxId, LockId, PuzzleId};
use crate::kit::{Kit, LockKind, Play, PropRole};
use crate::limits;
use crate::script::ALOUD;

/// All that a rehearsal depends on: while a stage stays the same, so does its rehearsal.
#[derive(Clone, Debug, PartialEq)]
pub struct Stage {
    /// What lies where and what opens what.
    pub net: Net,
    /// Where the finish is.
    pub finish: Vec<Where>,
    /// The puzzles, in the order of the net.
    pub puzzles: Vec<Task>,
    /// For each thing of the net whether it has to be looked for where it lies openly.
    pub sought: Vec<bool>,
    /// Least and most guests.
    pub guests: (u8, u8),
    /// Minutes that the play is meant to take.
    pub minutes: f64,
    /// Quiet minutes after which the host offers a token; ∞ for a host who never does.
    pub quiet: f64,
    /// Minutes that all spend on the letter first.
    pub letter: f64,
    /// How groups go about it.
    pub habits: Habits,
    /// The play level.
    pub level: Level,
    /// Real evenings of which not every puzzle was timed, the oldest first: their whole minutes correct the estimates.
    pub totals: Vec<Total>,
    /// The names of the boxes, in the order of the net.
    pub boxes: Vec<BoxId>,
    /// The names of the locks.
    pub locks: Vec<LockId>,
    /// The seed of chance.
    pub seed: u64,
}

/// A puzzle as work.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// Which one.
    pub id: PuzzleId,
    /// What is known of its minutes.
    pub estimate: Estimate,
    /// What that rests on.
    pub belief: Belief,
    /// The minutes that two guests need with no hint, at this level.
    pub time: LogNormal,
    /// Which steps of its ladder there are.
    pub steps: [bool; 3],
    /// How many steps lie open from the start.
    pub open: u8,
    /// At how many locks its answer is tried on the average: more than one where locks cannot be told apart.
    pub locks: f64,
}

impl Stage {
    /// The stage of a kit at a level; `parts` are the parts that its puzzles have.
    ///
    /// # Errors
    /// When the finish cannot be reached: then there is nothing to rehearse.
    pub fn new(kit: &Kit, parts: &Parts<'_>, level: Level) -> Hinted<Self> {
        let (net, finish) = flow::net(kit, parts);
        let reached = net.play();
        let open = |place: &Where| match place {
            Where::Open => true,
            Where::Nowhere => false,
            Where::Box(at) => reached.boxes.get(*at).is_some_and(Option::is_some),
        };
        if !finish.iter().all(open) {
            return Err(Trouble::new("the end cannot be reached, so there is nothing to rehearse")
                .hint("`inklatch check` says what is in the way"));
        }
        let rules = kit.levels.of(level);
        let habits = Habits::default();
        let alike = alike(kit);
        let puzzles = kit.puzzles.iter().map(|puzzle| {
            let (estimate, belief) = Estimate::believed(kit, puzzle, level);
            let hints = puzzle.hints_at(level);
            let locks = alike.get(&puzzle.opens).copied().unwrap_or(1);
            Task {
                id: puzzle.id.clone(),
                estimate,
                belief,
                time: estimate.time().longer(habits.slower(level)),
                steps: Step::ALL.map(|step| !hints.step(step).trim().is_empty()),
                open: rules.open_steps,
                // Of n locks that look alike the right one is found at the (n + 1) / 2th, on the average.
                locks: (locks as f64 + 1.0) / 2.0,
            }
        });
        let timed =
            |minutes: f64, hints: u8| habits.without_hints(minutes, rules.open_steps, hints) / habits.slower(level);
        let totals = kit.plays.plays.iter().filter(|play| play.level == level);
        let totals = totals.filter_map(|play| Total::of(kit, play, timed)).collect();
        let (least, most) = kit.players;
        let most = most.clamp(1, limits::REHEARSED_GUESTS);
        let puzzles = puzzles.collect();
        Ok(Self {
            puzzles,
            sought: sought(kit, &net),
            guests: (least.clamp(1, most), most),
            minutes: f64::from(kit.minutes_at(level)),
            quiet: f64::from(rules.quiet_minutes.max(1)),
            letter: letter(kit),
            level,
            totals,
            habits,
            boxes: kit.boxes.iter().map(|item| item.id.clone()).collect(),
            locks: kit.locks.iter().map(|lock| lock.id.clone()).collect(),
            seed: kit.seed,
            net,
            finish,
        })
    }

    /// How many evenings are rehearsed where nobody asks for a number.
    #[must_use]
    pub fn usual_runs(&self) -> usize {
        (limits::REHEARSED_PUZZLES / self.puzzles.len().max(1)).clamp(limits::REHEARSED_LEAST, limits::REHEARSED_RUNS)
    }
}

/// Minutes for the letter, where guests find it and one of them reads it out; one that the host reads aloud comes before
/// the start. In quarters, so that not every word typed makes another evening of it.
fn letter(kit: &Kit) -> f64 {
    if kit.letter.place.is_none() {
        return 0.0;
    }
    let words = kit.letter.body.split_whitespace().count();
    (words as f64 / ALOUD * 4.0).round() / 4.0
}

/// Of how many locks each cannot be told by its mark or its kind; itself included.
fn alike(kit: &Kit) -> BTreeMap<&LockId, usize> {
    let mut groups: BTreeMap<(&str, String), Vec<&LockId>> = BTreeMap::new();
    for lock in &kit.locks {
        let told = matches!(lock.kind, LockKind::Key | LockKind::Spoken);
        // A mark tells its lock from all others; keys and words do not go round.
        let name = if told || !lock.mark.trim().is_empty() { lock.id.as_str() } else { "" };
        groups.entry((name, lock.kind.describe())).or_default().push(&lock.id);
    }
    groups.into_values().flat_map(|locks| locks.clone().into_iter().map(move |lock| (lock, locks.len()))).collect()
}

/// What guests look for: parts, tools and loose keys. A key to which a puzzle leads is found by solving it, and what
/// nothing needs keeps nobody.
fn sought(kit: &Kit, net: &Net) -> Vec<bool> {
    let needed: BTreeSet<usize> = net.puzzles.iter().flatten().copied().collect();
    let loose = |item: usize| net.locks.iter().flatten().any(|opener| *opener == flow::net::Opener::Item(item));
    let key = |item: usize| kit.props.get(item).is_some_and(|prop| matches!(prop.role, PropRole::Key(_)));
    (0..net.items.len()).map(|item| if key(item) { loose(item) } else { needed.contains(&item) }).collect()
}

/// An evening that was played to its end, of whose puzzles some were not timed.
#[derive(Clone, Debug, PartialEq)]
pub struct Total {
    /// How many guests.
    pub guests: u8,
    /// Minutes in all.
    pub minutes: f64,
    /// The minutes of each puzzle of the stage, as they would have been without hints; none where nobody wrote them down.
    pub known: Vec<Option<f64>>,
}

impl Total {
    /// A play as a total; none where it did not reach the end, or every puzzle was timed.
    pub(super) fn of(kit: &Kit, play: &Play, without_hints: impl Fn(f64, u8) -> f64) -> Option<Self> {
        let known: Vec<Option<f64>> = kit
            .puzzles
            .iter()
            .map(|puzzle| play.puzzles.get(&puzzle.id).map(|timed| without_hints(timed.minutes, timed.hints)))
            .collect();
        let some = play.finished && play.minutes.is_finite() && play.minutes > 0.0 && known.iter().any(Option::is_none);
        some.then_some(Self { guests: play.guests, minutes: play.minutes, known })
    }
}
