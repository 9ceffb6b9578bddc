use super::text_overflows::tenths;
use super::{Draft, Facts, Sink, things};
use crate::diag::{Anchor, PuzzleField};
use crate::face::prose;
use crate::script::Readability;

check!(
    /// ## What it does
    /// Flags the letter, a longer note, or the rules and texts on the pieces of a puzzle, whose Flesch-Kincaid grade
    /// (Kincaid and others, 1975) asks for readers more than a year older than the youngest guest. The letter and notes
    /// of fewer than 40 words, and puzzles of fewer than 20, are left out: the grade says little of them. Rules are held
    /// to the age of six at least, because they are read to those who are younger. Hints are not counted.
    ///
    /// ## Why it matters at the table
    /// A child who loses the thread of the letter does not know what the party is about. The grade counts lengths of
    /// sentences and words, and nothing else; take it as a hint.
    ///
    /// ## How to mend
    /// Part long sentences, take shorter words, or have the host read the text aloud. Rules that a mechanic prints can
    /// be read at the age that the mechanic is for (`inklatch mechanics`): for younger guests take another.
    ReadingAge, "reading-age", Warns, "a text that is hard to read for the youngest guest",
    "a child who loses the thread does not know what the party is about", run
);

/// Fewest words of a text of which the grade says anything (common practice, no source).
const LEAST_WORDS: usize = 40;
/// Fewest words of the rules of a puzzle: one word of three syllables more then shifts the grade by a year at most
/// (11.8 × 2 / 20).
const LEAST_OF_RULES: usize = 20;
/// The youngest that read rules by themselves; they are read to those who are younger (common practice, no source).
const READERS: u8 = 6;
/// Years that the grade may be off: readers of one class differ by more than that.
const SLACK: f64 = 1.0;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (at, name, read) in things::readable(facts) {
        if let Some(message) = hard((facts.kit.ages.0, 0), &name, read, LEAST_WORDS) {
            let help = "part long sentences, take shorter words, or have the host read it aloud";
            sink.add(Draft::new(at, message).help(help));
        }
    }
    for (at, texts) in prose(&facts.party.pieces) {
        let Anchor::Puzzle(id, PuzzleField::Setup) = at else { continue };
        let Some(puzzle) = facts.puzzle(id) else { continue };
        let read = texts.iter().map(|text| Readability::of(text)).fold(Readability::default(), Readability::and);
        let name = format!("what is to be read on the pieces of \"{}\"", puzzle.title);
        if let Some(message) = hard((facts.kit.ages.0, READERS), &name, read, LEAST_OF_RULES) {
            let help = "part long sentences and take shorter words where the words are yours; else have the host read it \
                        aloud, or take a mechanic for that age";
            sink.add(Draft::new(at.clone(), message).help(help));
        }
    }
}

/// What to say of a text that asks for older readers than the youngest guest who reads it.
fn hard((youngest, readers): (u8, u8), name: &str, read: Readability, least: usize) -> Option<String> {
    let (age, grade) = (read.age()?, read.grade()?);
    (read.words >= least && age > f64::from(youngest.max(readers)) + SLACK).then(|| {
        let (grade, age) = (tenths(grade), age.round());
        format!("{name} has grade {grade}, for readers of about {age} years, and the youngest guest is {youngest}")
    })
}
