use super::{Draft, Facts, SetPiece, Sink, things};
use crate::diag::{Anchor, PuzzleField};
use crate::face::proof::Printed;
use crate::readings::Verdict;

check!(
    /// ## What it does
    /// Reads every puzzle once more from its laid-out pieces: from the letters, digits and outlines that go to the
    /// printer, with their places, sizes and colours. Flags one whose paper reads otherwise than what was proven, or
    /// cannot be read at all. What is made by hand is taken as the host is told to make it. It looks where the pieces
    /// are set: in `check`, in an export, and in the window when nothing is being edited.
    ///
    /// ## Why it matters at the table
    /// Guests solve what is on the paper, not what the program meant to put there.
    ///
    /// ## How to mend
    /// Look at the pieces. A picture of the theme that covers a text, a frame whose slot is too small, or two symbols
    /// that are one drawing are the usual causes; draw them anew, or choose others in the setup.
    PrintDiffers, "print-differs", Blocks, "what is printed reads otherwise than what was proven",
    "guests solve what is on the paper", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        // Anything but one true reading is another finding already.
        if laid.verdict != Some(Verdict::One) {
            continue;
        }
        let printed = sides(facts, puzzle.id.as_str());
        if printed.is_empty() {
            continue;
        }
        let Some(again) = facts.party.reread(facts.kit, facts.theme, puzzle, printed) else { continue };
        let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole);
        match again {
            Err(trouble) => {
                let message = format!("what is printed of \"{}\" cannot be read: {}", puzzle.title, trouble.message);
                sink.add(Draft::new(at, message).help(MEND));
            }
            Ok(found) if found.verdict(&laid.answer) == Verdict::One => {}
            Ok(found) => {
                let answers: Vec<&str> = found.list.iter().map(|reading| reading.answer.as_str()).collect();
                let answers = if answers.is_empty() { "nothing".to_owned() } else { answers.join(", ") };
                let message =
                    format!("what is printed of \"{}\" reads as {answers}, not as {}", puzzle.title, laid.answer);
                sink.add(Draft::new(at, message).help(MEND));
            }
        }
    }
}

const MEND: &str = "look at its pieces: does a picture cover a text, or is a symbol drawn like another?";

/// The sides of a puzzle's pieces as they were laid out; none unless every piece was.
fn sides(facts: &Facts<'_>, puzzle: &str) -> Vec<Printed> {
    let mut sides = Vec::new();
    for piece in facts.party.pieces.iter().filter(|piece| piece.group == puzzle) {
        let of = |set: &&SetPiece| set.piece == piece.id && set.paper.is_none();
        match facts.set.iter().find(of) {
            Some(set) if !set.printed.is_empty() => sides.extend(set.printed.iter().cloned()),
            _ => return Vec::new(),
        }
    }
    sides
}
