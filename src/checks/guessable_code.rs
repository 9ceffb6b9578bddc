use super::{Draft, Facts, Sink, mends, things};
use crate::codes::guess;
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Flags a code that people try first: one digit or push throughout, a run up or down, a year, a date of the
    /// holidays.
    ///
    /// ## Why it matters at the table
    /// Somebody turns the wheels while the others still read. A few codes cover a large share of all that people
    /// choose themselves: repeats, runs, years and dates lead the list (Berry, "PIN analysis", 2012, quoted from
    /// press reports).
    ///
    /// ## How to mend
    /// Choose a code with no pattern.
    GuessableCode, "guessable-code", Warns, "a code that people try first",
    "somebody turns the wheels while the others still read", run, mends::other_code
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for code in things::codes(facts) {
        let Some(what) = guess(&code.lock.kind, &code.answer) else { continue };
        let message = format!("{} of {} is {}", code.answer, code.lock.name, what.words());
        let draft = Draft::new(Anchor::Puzzle(code.puzzle.id.clone(), PuzzleField::Answer), message);
        sink.add(draft.help("choose a code with no pattern"));
    }
}
