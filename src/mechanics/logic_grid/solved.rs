//! What belongs together, for the host.

use super::View;
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::readings::Budget;
use crate::script::capital;

/// For each kind the row in which each thing stands; none where the statements do not settle it.
pub(super) fn whole(view: &View) -> Option<Vec<Vec<usize>>> {
    let mut found: Vec<Vec<Vec<usize>>> = Vec::new();
    view.size()?
        .each(&view.clues(), &mut Budget::new(limits::GRID_STEPS), &mut |rows| {
            found.push(rows.to_vec());
            found.len() < 2
        })
        .ok()?;
    let [only] = <[Vec<Vec<usize>>; 1]>::try_from(found).ok()?;
    Some(only)
}

pub(super) fn solved(view: &View) -> Option<Solved> {
    let (size, only) = (view.size()?, whole(view)?);
    let row = |row: usize| -> Option<Vec<String>> {
        let thing = |kind: usize| {
            let at = only.get(kind)?.iter().position(|other| *other == row)?;
            view.kinds.get(kind)?.things.get(at).cloned()
        };
        (0..size.kinds).map(thing).collect()
    };
    let rows: Option<Vec<Vec<String>>> = (0..size.items).map(row).collect();
    let tags = size.kinds.checked_sub(1)?;
    let head = |(kind, named): (usize, &super::Kind)| capital(if kind == tags { &view.tag } else { &named.name });
    let head = view.kinds.iter().enumerate().map(head).collect();
    Some(Solved::Table { says: "What stands in one row goes together.".to_owned(), head, rows: rows? })
}

/// The tags of a whole kind, in the order in which its things are listed.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let Some((size, only)) = view.size().zip(whole(view)) else { return Vec::new() };
    let Some(tags) = size.kinds.checked_sub(1) else { return Vec::new() };
    let tag = |kind: usize, at: usize| {
        let row = only.get(kind)?.get(at)?;
        let at = only.get(tags)?.iter().position(|other| other == row)?;
        view.kinds.get(tags)?.things.get(at).cloned()
    };
    let why = "they took the tags in the order of the table: the last line of the sheet names what to read.";
    let listed = |kind: usize| (0..size.items).filter_map(|at| tag(kind, at)).collect::<String>();
    (0..tags).map(|kind| (listed(kind), why)).collect()
}
