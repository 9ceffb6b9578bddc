use super::{Draft, Facts, Finding, Fix, Sink, things, trying};
use crate::codes::{ordered_by, says};
use crate::diag::{Anchor, PuzzleField};
use crate::ids::PuzzleId;
use crate::kit::LockKind;

check!(
    /// ## What it does
    /// Flags titles or marks of puzzles that are numbered in the order in which the puzzles can be solved, and a mark
    /// that is the answer of its own puzzle.
    ///
    /// ## Why it matters at the table
    /// Hint tokens lie in view with their marks: guests read off what comes next, which is a part of the play.
    ///
    /// ## How to mend
    /// Give names without numbers, or numbers in another order, and a mark that has nothing to do with the answer.
    TokenOrderTells, "token-order-tells", Warns, "names or marks that tell the order or the answer",
    "hint tokens lie in view, and guests read off what comes next", run, mend
);

/// Fewer names with numbers agree with the order by chance.
const LEAST: usize = 3;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let titles = facts.party.script.puzzles.iter().map(|text| (text.id.clone(), text.title.clone()));
    if let Some((first, names)) = in_order(facts, titles) {
        let message = format!("the titles are numbered in the order of solving: {names}");
        let draft = Draft::new(Anchor::Puzzle(first, PuzzleField::Title), message);
        sink.add(draft.help("take the numbers out, or number in another order"));
    }
    let marks = facts.kit.puzzles.iter().filter_map(|puzzle| {
        Some((puzzle.id.clone(), facts.lock(&puzzle.opens)?.mark.replace('-', " ")))
    });
    if let Some((first, names)) = in_order(facts, marks) {
        let message = format!("the marks are numbered in the order of solving: {names}");
        let lock = facts.puzzle(&first).map(|puzzle| puzzle.opens.clone());
        sink.add(Draft::new(lock.map_or(Anchor::Kit, Anchor::Lock), message).help("choose marks without numbers"));
    }
    for code in things::codes(facts).iter().filter(|code| code.lock.kind != LockKind::Key) {
        let mark = code.lock.mark.replace('-', " ");
        if says(&mark, &code.lock.kind, &code.answer).is_some_and(crate::codes::Saying::whole) {
            let message = format!("the mark of {} is the answer of \"{}\"", code.lock.name, code.puzzle.title);
            sink.add(Draft::new(Anchor::Lock(code.lock.id.clone()), message).help("choose another mark"));
        }
    }
}

/// The first puzzle and all names, quoted, where the numbers in the names go up with the rounds in which the puzzles
/// are solved, and say more than one round.
fn in_order(facts: &Facts<'_>, names: impl Iterator<Item = (PuzzleId, String)>) -> Option<(PuzzleId, String)> {
    let mut rows: Vec<(usize, usize, PuzzleId, String)> = names
        .filter_map(|(id, name)| Some((*facts.flow.puzzles.get(&id)?, ordered_by(&name)?, id, name)))
        .collect();
    rows.sort();
    let rounds_apart = rows.first()?.0 < rows.last()?.0;
    let agrees = |pair: &[(usize, usize, PuzzleId, String)]| match pair {
        [(before, lower, ..), (after, higher, ..)] => before == after || lower < higher,
        _ => true,
    };
    if rows.len() < LEAST || !rounds_apart || !rows.windows(2).all(agrees) {
        return None;
    }
    let quoted: Vec<String> = rows.iter().map(|(.., name)| format!("\"{name}\"")).collect();
    Some((rows.first()?.2.clone(), quoted.join(", ")))
}

/// Another symbol for the lock.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let Anchor::Lock(id) = &finding.anchor else { return None };
    trying::sound(facts, finding, trying::other_marks(facts, facts.lock(id).into_iter().collect()))
}
