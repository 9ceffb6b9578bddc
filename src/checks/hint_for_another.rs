use super::{Draft, Facts, Sink, ladder, mends, things};
use crate::codes::{Saying, says};
use crate::kit::LockKind;

check!(
    /// ## What it does
    /// Flags a hint that holds the code of another puzzle, as it is set, backwards, or spelled by first letters.
    ///
    /// ## Why it matters at the table
    /// Guests who ask about one puzzle are given the end of another that they have not begun.
    ///
    /// ## How to mend
    /// Change the hint, or the other puzzle's answer.
    HintForAnother, "hint-for-another", Warns, "a hint that holds another puzzle's code",
    "guests who ask about one puzzle are given the end of another", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let codes = things::codes(facts);
    let index = things::index(&codes);
    for hint in ladder::hints(facts) {
        let may = index.may_say(hint.text).into_iter().filter_map(|at| codes.get(at));
        for code in may.filter(|code| code.lock.kind != LockKind::Key && code.puzzle.id != hint.puzzle.id) {
            if says(hint.text, &code.lock.kind, &code.answer).is_some_and(Saying::whole) {
                let message = format!(
                    "the {} of \"{}\" holds the code of \"{}\"",
                    hint.step.word(),
                    hint.puzzle.title,
                    code.puzzle.title
                );
                let draft = Draft::new(hint.anchor.clone(), message).help("change the hint or the code");
                sink.add(mends::with_drafted(facts, draft, &hint));
            }
        }
    }
}
