use super::{Draft, Facts, Finding, Fix, FixKind, Sink, things, trying};
use crate::diag::{Anchor, PuzzleField, Severity};
use crate::kit::Lying;
use crate::kit::edit::Edit;
use crate::kit::file::nearest;
use crate::mechanics;

check!(
    /// ## What it does
    /// Flags a part of a puzzle that is printed or made but laid nowhere, and a place given for a part that the
    /// puzzle does not have. It blocks where a part lies nowhere and the finish cannot be reached, else it warns.
    ///
    /// ## Why it matters at the table
    /// The host does not know where it goes, and without it the puzzle cannot be solved; or the host looks for a
    /// piece that was never printed.
    ///
    /// ## How to mend
    /// Say where each part lies; take out the parts that are not there.
    PieceInNoPlace, "piece-in-no-place", Blocks, "a part laid nowhere, or laid but not there",
    "the host does not know where it goes", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, laid) in things::puzzles(facts) {
        let (Ok(_), Ok(mechanic)) = (&laid.laid, mechanics::find(&puzzle.mechanic)) else { continue };
        let at = |part: &str| Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Part(part.to_owned()));
        let missing: Vec<&str> =
            laid.parts.iter().copied().filter(|part| !puzzle.parts.contains_key(*part)).collect();
        let extra: Vec<&String> = puzzle.parts.keys().filter(|part| !laid.parts.contains(&part.as_str())).collect();
        let meant = |part: &str| match (missing.as_slice(), extra.as_slice()) {
            ([only], [_]) => Some(*only),
            _ => nearest(part, &missing),
        };
        let name = |part: &str| {
            mechanic.meta().parts.iter().find(|known| known.key == part).map_or_else(|| part.to_owned(), |known| known.name.to_owned())
        };
        // Without the part the puzzle cannot be solved; it matters as much as what then stays shut.
        let lost = if facts.flow.finish_reachable { Severity::Warns } else { Severity::Blocks };
        let mut told: Vec<&str> = Vec::new();
        for part in &extra {
            let mut mended = puzzle.clone();
            let place = mended.parts.remove(*part);
            let message = format!("\"{}\" has no part `{part}`, but a place for it", puzzle.title);
            match meant(part).filter(|meant| !told.contains(meant)).zip(place) {
                Some((meant, place)) => {
                    told.push(meant);
                    mended.parts.insert(meant.to_owned(), place);
                    let message = format!("{message}, and {} (`{meant}`) lies nowhere", name(meant));
                    let draft = Draft::new(at(part), message).severity(lost).help(format!("did you mean `{meant}`?"));
                    let edits = vec![Edit::Puzzle(Box::new(mended))];
                    sink.add(draft.fix(format!("Write `{meant}` for `{part}`"), FixKind::Ask, edits));
                }
                None => {
                    let draft = Draft::new(at(part), message)
                        .severity(Severity::Warns)
                        .why("the host looks for a piece that was never printed")
                        .help(format!("its parts are {}", laid.parts.join(", ")));
                    sink.add(draft.fix("Take the place out", FixKind::Safe, vec![Edit::Puzzle(Box::new(mended))]));
                }
            }
        }
        for part in missing.iter().filter(|part| !told.contains(*part)) {
            let message = format!("{} of \"{}\" lies nowhere", name(part), puzzle.title);
            let help = format!("add `{part}` to its parts, with a spot or a box: \"{part}\": Spot(\"…\")");
            sink.add(Draft::new(at(part), message).severity(lost).help(help));
        }
    }
}

/// A place for the part.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, PuzzleField::Part(part)) = &finding.anchor else { return None };
    trying::sound(facts, finding, trying::elsewhere(facts, &Lying::Part(id.clone(), part.clone())))
}
