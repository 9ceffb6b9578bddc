use std::collections::BTreeSet;

use super::{Draft, Facts, Finding, Fix, Sink, things, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::flow::facts::{place_words, thing_words};
use crate::ids::PuzzleId;
use crate::kit::{Lying, Place};

check!(
    /// ## What it does
    /// Flags a puzzle that the finish does not need: the last box opens without it. It also flags a closing card
    /// that can be had before the last box opens.
    ///
    /// ## Why it matters at the table
    /// Guests pass it by, and its minutes are missing from the evening; or they read the end before the end.
    ///
    /// ## How to mend
    /// Hang its lock on a box on the way, or put something into its box that is needed.
    FinishWithoutIt, "finish-without-it", Warns, "a puzzle that the finish does not need",
    "guests pass it by, and its minutes are missing from the evening", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let (flow, finish) = (facts.flow, &facts.kit.finish);
    if !flow.finish_reachable {
        return;
    }
    let needed: BTreeSet<&PuzzleId> = flow.needed.iter().collect();
    for puzzle in facts.kit.puzzles.iter().filter(|puzzle| !needed.contains(&puzzle.id)) {
        let message = format!("the last box opens without \"{}\"", puzzle.title);
        let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Opens), message);
        sink.add(draft.help("hang its lock on the way to the finish, or put into its box what another puzzle needs"));
    }
    if let (Some(card), Some(opened)) = (flow.notes.get(&finish.card), flow.boxes.get(&finish.opens))
        && card < opened
    {
        let draft = Draft::new(Anchor::Finish, "the closing card can be had before the last box opens");
        sink.add(draft.why("guests read the end before the end").help("lay the closing card into the last box"));
    }
}

/// The closing card laid into the last box; a part of another puzzle laid into the box that this one opens.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let (kit, last) = (facts.kit, &facts.kit.finish.opens);
    let into = |thing: &Lying, place: &Place| {
        let title = format!("Lay {} {}", thing_words(kit, thing), place_words(kit, place));
        Some(trying::ask(facts.party.say(&title), vec![trying::laid(kit, thing, place.clone())?]))
    };
    let Anchor::Puzzle(id, _) = &finding.anchor else {
        return trying::sound(facts, finding, into(&Lying::Note(kit.finish.card.clone()), &Place::Box(last.clone())));
    };
    let opened = Place::Box(things::shut(kit).get(&facts.puzzle(id)?.opens)?.id.clone());
    let others = kit.puzzles.iter().filter(|puzzle| puzzle.id != *id);
    let parts = others.flat_map(|puzzle| puzzle.parts.keys().map(|part| Lying::Part(puzzle.id.clone(), part.clone())));
    trying::sound(facts, finding, parts.filter_map(|part| into(&part, &opened)))
}
