use super::{Draft, Facts, Sink};
use crate::diag::Anchor;

check!(
    /// ## What it does
    /// Notes a tool that guests have long before the first puzzle that needs it.
    ///
    /// ## Why it matters at the table
    /// A tool on view asks to be used: guests try it on everything and are led astray.
    ///
    /// ## How to mend
    /// Lay the tool into a box that opens shortly before its puzzle.
    ToolTooEarly, "tool-too-early", Notes, "a tool on view long before its puzzle",
    "a tool on view asks to be used: guests try it on everything", run
);

/// Rounds between a tool and its puzzle that are too many (common practice, no source).
const WAIT: usize = 3;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for prop in &facts.kit.props {
        let users = facts.kit.puzzles.iter().filter(|puzzle| puzzle.tools.contains(&prop.id));
        let first = users.filter_map(|puzzle| facts.flow.puzzles.get(&puzzle.id).map(|at| (*at, puzzle))).min_by_key(|(at, _)| *at);
        let (Some(had), Some((used, puzzle))) = (facts.flow.props.get(&prop.id), first) else { continue };
        // What is solved in a round is open at the end of the one before.
        let wait = used.saturating_sub(1).saturating_sub(*had);
        if wait >= WAIT {
            let message = format!("{} is to hand {wait} rounds before \"{}\" needs it", prop.name, puzzle.title);
            let draft = Draft::new(Anchor::Prop(prop.id.clone()), message);
            sink.add(draft.help("lay it into a box that opens shortly before"));
        }
    }
}
