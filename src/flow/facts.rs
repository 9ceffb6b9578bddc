//! The flow in sentences, and what of it an author should look at.

use serde::Serialize;

use super::Flow;
use crate::diag::{Anchor, PuzzleField};
use crate::ids::{PropId, PuzzleId};
use crate::kit::{Apart, Kit, Lying, Place, Positions};
use crate::script::capital;

/// Rounds between a tool and its puzzle that are too many (common practice, no source).
pub const TOOL_WAIT: usize = 3;
/// Rounds in a row with one open puzzle that make a stretch (common practice, no source).
pub const STRETCH: usize = 3;

/// A sentence about the flow, and where in the kit to look.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Fact {
    /// The sentence.
    pub words: String,
    /// Where to look; empty when it is about the whole.
    pub anchors: Vec<Anchor>,
}

/// Rounds in a row in which only one puzzle is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Stretch {
    /// The first such round, from 1.
    pub first: usize,
    /// The last.
    pub last: usize,
}

/// A tool that guests have long before the first puzzle that needs it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct EarlyTool {
    /// The tool.
    pub prop: PropId,
    /// The first puzzle that needs it.
    pub puzzle: PuzzleId,
    /// Rounds between.
    pub wait: usize,
}

/// Two things that were to lie apart and lie at one place.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ClosePair {
    /// What was to lie apart.
    pub pair: Apart,
    /// Where both lie.
    pub place: Place,
}

impl Stretch {
    /// How many rounds it has.
    #[must_use]
    pub const fn len(self) -> usize {
        self.last + 1 - self.first
    }

    /// Never: a stretch has a round at least.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        false
    }
}

impl Flow {
    /// The longest stretch of rounds with one open puzzle; the first of several as long.
    #[must_use]
    pub fn single_file(&self) -> Option<Stretch> {
        let mut best: Option<Stretch> = None;
        let mut now: Option<Stretch> = None;
        for (at, round) in self.rounds.iter().enumerate() {
            let number = at + 1;
            now = (round.solves.len() == 1).then(|| Stretch { first: now.map_or(number, |s| s.first), last: number });
            if let Some(now) = now
                && best.is_none_or(|best| now.len() > best.len())
            {
                best = Some(now);
            }
        }
        best
    }
}

/// The tools that are to hand at least [`TOOL_WAIT`] rounds before the first puzzle that needs them.
pub(super) fn early_tools(kit: &Kit, flow: &Flow) -> Vec<EarlyTool> {
    let mut first: std::collections::BTreeMap<&PropId, (usize, &PuzzleId)> = std::collections::BTreeMap::new();
    for puzzle in &kit.puzzles {
        let Some(at) = flow.puzzles.get(&puzzle.id) else { continue };
        for tool in &puzzle.tools {
            let known = first.entry(tool).or_insert((*at, &puzzle.id));
            if *at < known.0 {
                *known = (*at, &puzzle.id);
            }
        }
    }
    let early = |prop: &crate::kit::Prop| {
        let (used, puzzle) = first.get(&prop.id)?;
        // What is solved in a round is open at the end of the one before.
        let wait = used.saturating_sub(1).saturating_sub(*flow.props.get(&prop.id)?);
        (wait >= TOOL_WAIT).then(|| EarlyTool { prop: prop.id.clone(), puzzle: (*puzzle).clone(), wait })
    };
    kit.props.iter().filter_map(early).collect()
}

/// The pairs of the kit, and of its mechanics, that were to lie apart and lie at one place. A thing in a shut box
/// does not lie where the box stands.
#[must_use]
pub fn close_pairs(kit: &Kit, mechanics: &[Apart]) -> Vec<ClosePair> {
    if kit.apart.is_empty() && mechanics.is_empty() {
        return Vec::new();
    }
    let positions = Positions::of(kit);
    // A pair that the kit lists as well is told once, with the kit's reason; or not at all, where it may lie together.
    let listed = |pair: &Apart| kit.apart.iter().any(|own| own.same_pair(pair));
    kit.apart
        .iter()
        .filter(|pair| !pair.together)
        .chain(mechanics.iter().filter(|pair| !listed(pair)))
        .filter_map(|pair| {
            let place = place_at(kit, &positions, &pair.one)?;
            (place_at(kit, &positions, &pair.other)? == place)
                .then(|| ClosePair { pair: pair.clone(), place: place.clone() })
        })
        .collect()
}

/// Where a thing lies, if it is in the kit and lies anywhere.
#[must_use]
pub fn place_of<'a>(kit: &'a Kit, thing: &Lying) -> Option<&'a Place> {
    place_at(kit, &Positions::default(), thing)
}

fn place_at<'a>(kit: &'a Kit, positions: &Positions, thing: &Lying) -> Option<&'a Place> {
    match thing {
        Lying::Letter => kit.letter.place.as_ref(),
        Lying::Note(id) => positions.note(kit, id).map(|note| &note.place),
        Lying::Prop(id) => positions.prop(kit, id).map(|prop| &prop.place),
        Lying::Box(id) => positions.box_def(kit, id).map(|item| &item.place),
        Lying::Part(id, part) => positions.puzzle(kit, id)?.parts.get(part),
    }
}

/// A thing in words: "the word card of \"A cuff\"".
#[must_use]
pub fn thing_words(kit: &Kit, thing: &Lying) -> String {
    match thing {
        Lying::Letter => "the letter".into(),
        Lying::Note(id) => match kit.note(id).map(|note| note.title.trim()) {
            Some(title) if !title.is_empty() => format!("the note \"{title}\""),
            _ => format!("the note {id}"),
        },
        Lying::Prop(id) => kit.prop(id).map_or_else(|| id.to_string(), |prop| prop.name.clone()),
        Lying::Box(id) => kit.box_def(id).map_or_else(|| id.to_string(), |item| item.name.clone()),
        Lying::Part(id, part) => {
            let title = kit.puzzle(id).map_or(id.as_str(), |puzzle| puzzle.title.as_str());
            format!("the {} of \"{title}\"", part.replace('-', " "))
        }
    }
}

/// A place in words: "at the table", "in the tin".
#[must_use]
pub fn place_words(kit: &Kit, place: &Place) -> String {
    match place {
        Place::Spot(id) => format!("at {}", kit.spot(id).map_or(id.as_str(), |spot| spot.name.as_str())),
        Place::Box(id) => format!("in {}", kit.box_def(id).map_or(id.as_str(), |item| item.name.as_str())),
    }
}

/// The anchor of a thing.
#[must_use]
pub fn thing_anchor(thing: &Lying) -> Anchor {
    match thing {
        Lying::Letter => Anchor::Letter,
        Lying::Note(id) => Anchor::Note(id.clone()),
        Lying::Prop(id) => Anchor::Prop(id.clone()),
        Lying::Box(id) => Anchor::Box(id.clone()),
        Lying::Part(id, part) => Anchor::Puzzle(id.clone(), PuzzleField::Part(part.clone())),
    }
}

/// The flow in sentences: how it ends, how many work at once, where guests wait, what is spare, early or close.
/// Names stand in it as they stand in `kit`.
#[must_use]
pub fn facts(kit: &Kit, flow: &Flow) -> Vec<Fact> {
    let mut facts = Vec::new();
    let mut say = |words: String, anchors: Vec<Anchor>| facts.push(Fact { words, anchors });
    let puzzle = |id: &PuzzleId| Anchor::Puzzle(id.clone(), PuzzleField::Whole);
    let title = |id: &PuzzleId| format!("\"{}\"", kit.puzzle(id).map_or(id.as_str(), |puzzle| puzzle.title.as_str()));
    match flow.finish_round {
        Some(round) => say(format!("The end can be reached, in {}.", rounds(round)), vec![Anchor::Finish]),
        None => say("The end cannot be reached.".into(), vec![Anchor::Finish]),
    }
    let open: Vec<String> = flow.open_per_round().iter().map(usize::to_string).collect();
    if !open.is_empty() {
        say(format!("Open puzzles, round by round: {}.", open.join(", ")), Vec::new());
    }
    match flow.single_file() {
        Some(Stretch { first, last }) if first < last => {
            say(format!("From round {first} to round {last} only one puzzle is open at a time."), Vec::new());
        }
        Some(Stretch { first, .. }) => say(format!("Only one puzzle is open in round {first}."), Vec::new()),
        None if !open.is_empty() => say("In no round is only one puzzle open.".into(), Vec::new()),
        None => {}
    }
    if flow.chain.puzzles.len() > 1 {
        let titles: Vec<String> = flow.chain.puzzles.iter().map(title).collect();
        let words = format!(
            "The longest wait is {} puzzles one after the other, about {:.0} minutes by the estimates: {}.",
            titles.len(),
            flow.chain.minutes,
            titles.join(", then ")
        );
        say(words, flow.chain.puzzles.iter().map(puzzle).collect());
    }
    for id in &flow.spare.puzzles {
        say(format!("The end does not need {}.", title(id)), vec![puzzle(id)]);
    }
    for id in &flow.spare.boxes {
        let name = kit.box_def(id).map_or(id.as_str(), |item| item.name.as_str());
        say(format!("The end does not need {name} to open."), vec![Anchor::Box(id.clone())]);
    }
    for id in &flow.spare.props {
        let name = kit.prop(id).map_or(id.as_str(), |prop| prop.name.as_str());
        say(format!("The end does not need {name}."), vec![Anchor::Prop(id.clone())]);
    }
    for early in &flow.early {
        let name = kit.prop(&early.prop).map_or(early.prop.as_str(), |prop| prop.name.as_str());
        let words =
            format!("{} is to hand {} before {} needs it.", capital(name), rounds(early.wait), title(&early.puzzle));
        say(words, vec![Anchor::Prop(early.prop.clone()), puzzle(&early.puzzle)]);
    }
    for close in &flow.close {
        say(
            format!("{}.", capital(&close_words(kit, close))),
            vec![thing_anchor(&close.pair.one), thing_anchor(&close.pair.other)],
        );
    }
    facts
}

/// A pair that lies too close, in a line.
#[must_use]
pub fn close_words(kit: &Kit, close: &ClosePair) -> String {
    format!(
        "{} and {} were to lie apart, and both lie {}",
        thing_words(kit, &close.pair.one),
        thing_words(kit, &close.pair.other),
        place_words(kit, &close.place)
    )
}

fn rounds(count: usize) -> String {
    if count == 1 { "1 round".into() } else { format!("{count} rounds") }
}
