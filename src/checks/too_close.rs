use super::{Draft, Facts, Finding, Fix, FixKind, Sink, trying};
use crate::flow::facts::{ClosePair, close_words, thing_anchor};
use crate::kit::Apart;
use crate::kit::edit::Edit;

check!(
    /// ## What it does
    /// Flags two things that were to lie apart and lie at one spot or in one box. The kit says which things these
    /// are (`apart`), and mechanics whose parts are a search add pairs of their own: a word and its key card, a grid and the
    /// card with windows for it.
    ///
    /// ## Why it matters at the table
    /// Found side by side they are no search, or guests mix up what belongs to which.
    ///
    /// ## How to mend
    /// Lay one of them somewhere else, or take the pair off the list of the kit. A pair of a mechanic that may lie together
    /// all the same goes onto that list with `together: true`. The help of a mechanic (`explain`) says which of its parts
    /// are to lie apart.
    TooClose, "too-close", Warns, "two things that were to lie apart share a spot",
    "found side by side they are no search, or guests mix them up", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for close in &facts.flow.close {
        let draft = Draft::new(thing_anchor(&close.pair.one), close_words(facts.kit, close));
        let draft = if close.pair.why.trim().is_empty() { draft } else { draft.why(close.pair.why.trim()) };
        let kept = if of_kit(facts, close) {
            "or take the pair off `apart`, if they may lie together"
        } else {
            "or add the pair to `apart` with `together: true`, if they may lie together"
        };
        sink.add(draft.help("lay one of them somewhere else").help(kept));
    }
}

/// Whether the kit lists the pair, rather than a mechanic.
fn of_kit(facts: &Facts<'_>, close: &ClosePair) -> bool {
    facts.kit.apart.iter().any(|own| own.same_pair(&close.pair))
}

/// One of the two laid elsewhere; where no other place will do, a pair of a mechanic that is let be.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let told = |close: &&ClosePair| facts.party.say(&close_words(facts.kit, close)) == finding.message;
    let close = facts.flow.close.iter().find(told)?;
    let things = [&close.pair.one, &close.pair.other];
    let elsewhere = things.into_iter().flat_map(|thing| trying::elsewhere(facts, thing));
    trying::sound(facts, finding, elsewhere).or_else(|| {
        let pair = Apart { together: true, ..close.pair.clone() };
        let apart = Edit::Apart(facts.kit.apart.iter().cloned().chain([pair]).collect());
        let title = "Let them lie together".to_owned();
        (!of_kit(facts, close)).then(|| Fix { title, kind: FixKind::Ask, edits: vec![apart] })
    })
}
