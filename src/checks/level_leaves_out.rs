use super::mend_setup::with_setup;
use super::{Draft, Facts, FixKind, Sink};
use crate::diag::{Anchor, Level, PuzzleField};
use crate::kit::edit::Edit;
use crate::kit::{Puzzle, RawSetup};
use crate::mechanics;

check!(
    /// ## What it does
    /// Notes a setup of `gentle` or `stiff` that leaves out a field which the puzzle's own setup gives. A level's setup stands
    /// in place of the puzzle's own, all of it: what it leaves out is not taken over, the mechanic's own holds there.
    ///
    /// ## Why it matters at the table
    /// The names and texts of another story are printed at that level.
    ///
    /// ## How to mend
    /// Write the field into the level's setup: as the standard setup has it, or, where the mechanic's own is meant, that one.
    LevelLeavesOut, "level-leaves-out", Notes, "a level's setup without a field that the standard setup gives",
    "the names and texts of another story are printed at that level", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let level = facts.party.level;
    if level == Level::Standard {
        return;
    }
    for puzzle in &facts.kit.puzzles {
        let Some(setup) = puzzle.change(level).and_then(|change| change.setup.as_ref()) else { continue };
        let left_out = left_out(puzzle, setup);
        if left_out.is_empty() {
            continue;
        }
        let names: Vec<String> = left_out.iter().map(|name| format!("`{name}`")).collect();
        let message = format!(
            "\"{}\": its setup for {} leaves out {}, which the standard setup gives: the mechanic's own holds there",
            puzzle.title,
            level.word(),
            names.join(", ")
        );
        let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup), message)
            .help("write it into the level's setup, which stands in place of the standard one as a whole");
        sink.add(match taken_over(puzzle, setup, &left_out) {
            Some(whole) => {
                let edit = Edit::Puzzle(Box::new(with_setup(puzzle.clone(), level, whole)));
                draft.fix("Take over what is left out", FixKind::Ask, vec![edit])
            }
            None => draft,
        });
    }
}

/// The fields that the puzzle's own setup gives and a level's leaves out, where that makes a difference.
fn left_out(puzzle: &Puzzle, setup: &RawSetup) -> Vec<String> {
    let Ok(mechanic) = mechanics::find(&puzzle.mechanic) else { return Vec::new() };
    let (Ok(base), Ok(here)) = (mechanic.setup_data(puzzle.setup.ron()), mechanic.setup_data(setup.ron())) else {
        // Another check says what is wrong with a setup that cannot be read.
        return Vec::new();
    };
    let written = setup.field_names();
    let given = puzzle.setup.field_names().into_iter().filter(|name| !written.contains(name));
    given.filter(|name| base.get(name) != here.get(name)).collect()
}

/// A level's setup with these fields as the puzzle's own has them.
fn taken_over(puzzle: &Puzzle, setup: &RawSetup, names: &[String]) -> Option<RawSetup> {
    names.iter().try_fold(setup.clone(), |setup, name| setup.with_field(name, puzzle.setup.field(name)?))
}
