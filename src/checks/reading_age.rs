use super::text_overflows::tenths;
use super::{Draft, Facts, Sink, things};

check!(
    /// ## What it does
    /// Flags the letter, or a longer note, whose Flesch-Kincaid grade (Kincaid and others, 1975) asks for readers more
    /// than a year older than the youngest guest. Texts of fewer than 40 words are left out: the grade says little of
    /// them.
    ///
    /// ## Why it matters at the table
    /// A child who loses the thread of the letter does not know what the party is about. The grade counts lengths of
    /// sentences and words, and nothing else; take it as a hint.
    ///
    /// ## How to mend
    /// Part long sentences, take shorter words, or have the host read the text aloud.
    ReadingAge, "reading-age", Warns, "a text that is hard to read for the youngest guest",
    "a child who loses the thread does not know what the party is about", run
);

/// Fewest words of a text of which the grade says anything (common practice, no source).
const LEAST_WORDS: usize = 40;
/// Years that the grade may be off: readers of one class differ by more than that.
const SLACK: f64 = 1.0;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let youngest = f64::from(facts.kit.ages.0);
    for (at, name, read) in things::readable(facts) {
        let (Some(age), Some(grade)) = (read.age(), read.grade()) else { continue };
        if read.words < LEAST_WORDS || age <= youngest + SLACK {
            continue;
        }
        let message = format!(
            "{name} has grade {}, for readers of about {} years, and the youngest guest is {}",
            tenths(grade),
            age.round(),
            facts.kit.ages.0
        );
        sink.add(Draft::new(at, message).help("part long sentences, take shorter words, or have the host read it aloud"));
    }
}
