use super::{Draft, Facts, Sink, ladder, mends};
use crate::codes::{Saying, as_set, says};
use crate::diag::{Severity, Step};

check!(
    /// ## What it does
    /// Flags a hint that holds the answer of its own puzzle: as digits, as number words or Roman numerals, backwards,
    /// spelled out, or with the first letters of its words. It blocks in a nudge or a method and warns in a giveaway,
    /// and it warns of a nudge or method that gives all but one symbol, or all of them in another order.
    ///
    /// ## Why it matters at the table
    /// A group that asked where to look is told the end; what they would have found is taken from them.
    ///
    /// ## How to mend
    /// Say where to look or what to do, and leave the digits to the guests.
    HintSaysIt, "hint-says-it", Blocks, "a hint that holds its puzzle's answer",
    "a group that asked where to look is told the end", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for hint in ladder::hints(facts) {
        let (Some(lock), Some(laid)) = (facts.lock(&hint.puzzle.opens), facts.party.puzzle(&hint.puzzle.id)) else {
            continue;
        };
        let Some(saying) = says(hint.text, &lock.kind, &as_set(&lock.kind, &laid.answer)) else { continue };
        let severity = match (hint.step, saying) {
            (Step::Giveaway, Saying::Nearly(_) | Saying::Shuffled) => continue,
            (Step::Giveaway, _) | (_, Saying::Nearly(_) | Saying::Shuffled) => Severity::Warns,
            (Step::Nudge | Step::Method, Saying::Whole | Saying::Reversed | Saying::Initials) => Severity::Blocks,
        };
        let message = format!("the {} of \"{}\" {}", hint.step.word(), hint.puzzle.title, saying.words());
        let draft = Draft::new(hint.anchor.clone(), message).severity(severity);
        let draft = draft.help("leave the last step to the guests; the host guide has the answer");
        sink.add(mends::with_drafted(facts, draft, &hint));
    }
}
