use super::{Draft, Facts, Finding, Fix, FixKind, Sink, things, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::Lying;
use crate::kit::edit::Edit;
use crate::kit::file::nearest;
use crate::mechanics;

check!(
    /// ## What it does
    /// Flags a part of a puzzle that is printed or made but laid nowhere, and a place given for a part that the
    /// puzzle does not have.
    ///
    /// ## Why it matters at the table
    /// The host does not know where it goes, and without it the puzzle cannot be solved; or the host looks for a
    /// piece that was never printed.
    ///
    /// ## How to mend
    /// Say where each part lies; take out the parts that are not there.
    PieceInNoPlace, "piece-in-no-place", Warns, "a part laid nowhere, or laid but not there",
    "the host does not know where it goes", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        let (Ok(_), Ok(mechanic)) = (&laid.laid, mechanics::find(&puzzle.mechanic)) else { continue };
        let at = |part: &str| Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Part(part.to_owned()));
        for part in laid.parts.iter().filter(|part| !puzzle.parts.contains_key(**part)) {
            let name = mechanic.meta().parts.iter().find(|known| known.key == *part).map_or(*part, |known| known.name);
            let message = format!("{name} of \"{}\" lies nowhere", puzzle.title);
            sink.add(Draft::new(at(part), message).help(format!("add `{part}` to its parts, with a spot or a box")));
        }
        for part in puzzle.parts.keys().filter(|part| !laid.parts.contains(&part.as_str())) {
            let message = format!("\"{}\" has no part `{part}`, but a place for it", puzzle.title);
            let mut draft = Draft::new(at(part), message).why("the host looks for a piece that was never printed");
            draft = match nearest(part, &laid.parts) {
                Some(near) => draft.help(format!("did you mean `{near}`?")),
                None => draft.help(format!("its parts are {}", laid.parts.join(", "))),
            };
            let mut mended = puzzle.clone();
            mended.parts.remove(part);
            sink.add(draft.fix("Take the place out", FixKind::Safe, vec![Edit::Puzzle(Box::new(mended))]));
        }
    }
}

/// A place for the part.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, PuzzleField::Part(part)) = &finding.anchor else { return None };
    trying::sound(facts, finding, trying::elsewhere(facts, &Lying::Part(id.clone(), part.clone())))
}
