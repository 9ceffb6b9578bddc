use super::{Draft, Facts, Finding, Fix, Sink, things, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::BoxDef;
use crate::kit::edit::Edit;

check!(
    /// ## What it does
    /// Flags a puzzle whose lock hangs on no box.
    ///
    /// ## Why it matters at the table
    /// Guests solve it and have nothing to open.
    ///
    /// ## How to mend
    /// Hang the lock on a box, or let the puzzle open another lock.
    PuzzleWithoutLock, "puzzle-without-lock", Blocks, "a puzzle whose lock hangs on no box",
    "guests solve it and have nothing to open", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let shut = things::shut(facts.kit);
    for puzzle in &facts.kit.puzzles {
        // A lock that does not exist is a name that leads nowhere.
        let Some(lock) = facts.lock(&puzzle.opens) else { continue };
        if !shut.contains_key(&puzzle.opens) {
            let message = format!("\"{}\" opens {}, which hangs on no box", puzzle.title, lock.name);
            let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Opens), message);
            sink.add(draft.help("hang the lock on a box, or let the puzzle open another"));
        }
    }
}

/// The lock hung on a box: the last one before all others.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Puzzle(id, _) = &finding.anchor else { return None };
    let lock = facts.lock(&facts.puzzle(id)?.opens)?;
    let last = facts.box_def(&facts.kit.finish.opens).into_iter();
    let boxes = last.chain(facts.kit.boxes.iter().filter(|item| item.id != facts.kit.finish.opens));
    let hung = boxes.map(|item| {
        let mut mended: BoxDef = item.clone();
        mended.locks.push(lock.id.clone());
        let title = facts.party.say(&format!("Hang {} on {}", lock.name, item.name));
        trying::ask(title, vec![Edit::Box(Box::new(mended))])
    });
    trying::sound(facts, finding, hung)
}
