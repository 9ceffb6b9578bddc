use super::View;
use crate::kit::LockKind;
use crate::mechanics::paper::place_letter;
use crate::readings::spell::each_row;
use crate::readings::{Budget, Readings};

/// What the marked cells can hold together, over all ways to fill the grid.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let Some(places) = view.places() else {
        readings.remarks.push("the grid is not whole: rows, columns, boxes and symbols must be equally many".into());
        return readings;
    };
    let cells: Vec<usize> = view.marks.iter().map(|(row, col)| row * places.size + col).collect();
    let givens = view.givens();
    let found = places.solutions(&givens, 2, budget);
    let solutions = found.as_ref().map(Vec::len).ok();
    let mut add = |row: &[usize]| {
        let symbols: Vec<char> = row.iter().filter_map(|value| view.symbols.get(*value).copied()).collect();
        let steps: Vec<String> = symbols
            .iter()
            .enumerate()
            .map(|(index, symbol)| format!("{} holds {symbol}", place_letter(index)))
            .collect();
        readings.add(lock, &symbols.iter().collect::<String>(), steps.join(", "));
        !readings.more
    };
    let done = match found.as_deref() {
        Ok([only]) => {
            let row: Vec<usize> = cells.iter().filter_map(|cell| only.get(*cell).copied()).collect();
            add(&row);
            Ok(())
        }
        // Of a grid with several solutions, what the marked cells can hold together: far fewer than its solutions.
        _ => each_row(
            cells.len(),
            places.size,
            &mut |row| {
                let mut tried = givens.clone();
                for (cell, value) in cells.iter().zip(row) {
                    let Some(place) = tried.get_mut(*cell) else { return Ok(false) };
                    if place.is_some_and(|given| given != *value) {
                        return Ok(false);
                    }
                    *place = Some(*value);
                }
                Ok(places.count(&tried, 1, budget)? == 1)
            },
            &mut add,
        ),
    };
    readings.unproven = done.is_err() || solutions.is_none();
    if solutions == Some(2) && readings.list.len() == 1 {
        readings
            .remarks
            .push("the grid has more than one solution, though the marked cells are the same in all".into());
    }
    let given = |cell: &usize| givens.get(*cell).is_some_and(Option::is_some);
    if cells.iter().any(given) {
        readings.remarks.push("a marked cell is filled from the start".into());
    }
    let deduced = places.deduce(&givens);
    if solutions == Some(1) && deduced.open > 0 {
        readings
            .remarks
            .push(format!("single deductions leave {} cells open: guests must reason further or try", deduced.open));
    }
    readings
}
