use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::flow::facts::{ClosePair, close_words, thing_anchor};

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
    /// Lay one of them somewhere else, or take the pair off the list of the kit. The help of a mechanic (`explain`) says
    /// which of its parts are to lie apart.
    TooClose, "too-close", Warns, "two things that were to lie apart share a spot",
    "found side by side they are no search, or guests mix them up", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for close in &facts.flow.close {
        let draft = Draft::new(thing_anchor(&close.pair.one), close_words(facts.kit, close));
        let draft = if close.pair.why.trim().is_empty() { draft } else { draft.why(close.pair.why.trim()) };
        sink.add(draft.help("lay one of them somewhere else"));
    }
}

/// One of the two laid elsewhere.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let told = |close: &&ClosePair| facts.party.say(&close_words(facts.kit, close)) == finding.message;
    let close = facts.flow.close.iter().find(told)?;
    let things = [&close.pair.one, &close.pair.other];
    trying::sound(facts, finding, things.into_iter().flat_map(|thing| trying::elsewhere(facts, thing)))
}
