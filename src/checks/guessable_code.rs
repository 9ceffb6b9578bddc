use super::{Draft, Facts, Sink, things};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::LockKind;

check!(
    /// ## What it does
    /// Flags digits that people try first: all alike, a run up or down, a year, a date of the holidays.
    ///
    /// ## Why it matters at the table
    /// Somebody turns the wheels while the others still read. A few codes cover a large share of all that people
    /// choose themselves: repeats, runs, years and dates lead the list (Berry, "PIN analysis", 2012, quoted from
    /// press reports).
    ///
    /// ## How to mend
    /// Choose digits with no pattern.
    GuessableCode, "guessable-code", Warns, "digits that people try first",
    "somebody turns the wheels while the others still read", run
);

/// Dates that guests of a party think of, as day and month or month and day: the turn of the year, the eves and
/// days of winter holidays, the fourteenth of February.
const DATES: &[&str] = &["2512", "1225", "2412", "1224", "3112", "1231", "0101", "2112", "1221", "1402", "0214", "0601", "0106"];

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for code in things::codes(facts) {
        let (LockKind::Digits(_), Some(what)) = (&code.lock.kind, pattern(&code.answer)) else { continue };
        let message = format!("{} of {} is {what}", code.answer, code.lock.name);
        let draft = Draft::new(Anchor::Puzzle(code.puzzle.id.clone(), PuzzleField::Answer), message);
        sink.add(draft.help("choose digits with no pattern"));
    }
}

/// What is easy to guess about a code of digits.
fn pattern(code: &str) -> Option<&'static str> {
    let digits: Vec<u32> = code.chars().filter_map(|c| c.to_digit(10)).collect();
    if digits.len() < 3 {
        return None;
    }
    let steps: Vec<i64> = digits.windows(2).map(|pair| i64::from(pair[1]) - i64::from(pair[0])).collect();
    let all = |step: i64| steps.iter().all(|found| *found == step);
    if all(0) {
        Some("one digit throughout")
    } else if all(1) || all(-1) {
        Some("a run")
    } else if digits.len() == 4 && (code.starts_with("19") || code.starts_with("20")) {
        Some("like a year")
    } else if DATES.contains(&code) {
        Some("a date of the holidays")
    } else if code == "007" {
        Some("known from films")
    } else {
        None
    }
}
