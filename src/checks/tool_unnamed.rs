use super::{Draft, Facts, FixKind, Sink, things};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::edit::Edit;
use crate::kit::material::material;
use crate::mechanics;

check!(
    /// ## What it does
    /// Flags a puzzle whose mechanic cannot do without a tool, such as a UV torch, when no prop of that material is
    /// among the puzzle's tools.
    ///
    /// ## Why it matters at the table
    /// Nothing then checks that guests have the tool before the puzzle: it may be locked behind itself.
    ///
    /// ## How to mend
    /// Add the prop, say where it lies, and name it among the puzzle's tools.
    ToolUnnamed, "tool-unnamed", Warns, "a puzzle that does not name a tool its mechanic needs",
    "nothing checks that guests can have the tool before they need it", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (puzzle, _) in things::puzzles(facts) {
        let Ok(mechanic) = mechanics::find(&puzzle.mechanic) else { continue };
        for id in mechanic.meta().tools {
            let named = puzzle.tools.iter().filter_map(|tool| facts.prop(tool));
            if named.into_iter().any(|prop| prop.material == *id) {
                continue;
            }
            let name = material(id).map_or(*id, |material| material.name);
            let message = format!("\"{}\" needs a {name}, which is not among its tools", puzzle.title);
            let draft = Draft::new(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole), message);
            let fitting: Vec<_> = facts.kit.props.iter().filter(|prop| prop.material == *id).collect();
            sink.add(match fitting.first() {
                Some(prop) => {
                    // Where there is but one such thing, there is nothing to choose.
                    let kind = if fitting.len() == 1 { FixKind::Safe } else { FixKind::Ask };
                    let mut mended = puzzle.clone();
                    mended.tools.push(prop.id.clone());
                    let title = format!("Name {} as its tool", prop.name);
                    draft
                        .help(format!("name `{}` among its tools", prop.id))
                        .fix(title, kind, vec![Edit::Puzzle(Box::new(mended))])
                }
                None => draft.help(format!("add a prop of the material `{id}` and name it among the tools")),
            });
        }
    }
}
