use super::text_overflows::tenths;
use super::{Draft, Facts, Sink, things};
use crate::diag::Anchor;
use crate::script::ALOUD;

check!(
    /// ## What it does
    /// Flags a letter that takes more than four minutes to read aloud, at 130 words a minute. Both figures are common
    /// practice, no source.
    ///
    /// ## Why it matters at the table
    /// The letter opens the evening. While one reads, the others wait, and the first lock is what they came for.
    ///
    /// ## How to mend
    /// Shorten the letter, or move part of it to a note that is found later.
    LetterTooLong, "letter-too-long", Notes, "a letter that takes more than four minutes to read aloud",
    "while one reads, the others wait", run
);

/// Most minutes (common practice, no source).
const MOST: f64 = 4.0;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let letter = things::readable(facts).into_iter().find(|(at, ..)| *at == Anchor::Letter);
    let Some((at, _, read)) = letter.filter(|(.., read)| read.minutes_aloud() > MOST) else { return };
    let message = format!(
        "the letter has {} words and takes {} minutes to read aloud, at {ALOUD} words a minute",
        read.words,
        tenths(read.minutes_aloud())
    );
    sink.add(Draft::new(at, message).help("shorten it, or move part of it to a note that is found later"));
}
