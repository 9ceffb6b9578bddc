//! Which rows of values several places of a solved puzzle can take together.

use crate::readings::tokens::Spent;

/// Calls `found` with every row of values, one for each place, that is possible as a whole; it says whether to go
/// on. `possible` is asked for every beginning: whether some solution takes these values at the first places.
///
/// So a puzzle with thousands of solutions, which differ where nobody looks, is settled in few questions.
///
/// # Errors
/// When `possible` spent its budget.
pub fn each_row(
    places: usize,
    values: usize,
    possible: &mut dyn FnMut(&[usize]) -> Result<bool, Spent>,
    found: &mut dyn FnMut(&[usize]) -> bool,
) -> Result<(), Spent> {
    walk(places, values, &mut Vec::new(), possible, found)?;
    Ok(())
}

fn walk(
    places: usize,
    values: usize,
    row: &mut Vec<usize>,
    possible: &mut dyn FnMut(&[usize]) -> Result<bool, Spent>,
    found: &mut dyn FnMut(&[usize]) -> bool,
) -> Result<bool, Spent> {
    if row.len() == places {
        return Ok(found(row));
    }
    for value in 0..values {
        row.push(value);
        let go_on = !possible(row)? || walk(places, values, row, possible, found)?;
        row.pop();
        if !go_on {
            return Ok(false);
        }
    }
    Ok(true)
}
