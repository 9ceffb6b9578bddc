use super::View;
use crate::kit::LockKind;
use crate::readings::matching::{Clue, Item};
use crate::readings::spell::each_row;
use crate::readings::{Budget, Readings};

/// The tags that the asked things can have together, over everything that the statements allow.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let Some(size) = view.size() else {
        readings.remarks.push("the kinds do not all have as many things".into());
        return readings;
    };
    let clues = view.clues();
    let mut found: Vec<Vec<Vec<usize>>> = Vec::new();
    let all = size.each(&clues, budget, &mut |rows| {
        found.push(rows.to_vec());
        found.len() < 2
    });
    let solutions = all.map(|()| found.len());
    let tags = size.kinds - 1;
    let symbol = |at: usize| view.kinds.get(tags).and_then(|kind| kind.things.get(at)).map_or("", String::as_str);
    let mut add = |row: &[usize]| {
        let answer: String = row.iter().map(|tag| symbol(*tag)).collect();
        let steps: Vec<String> = view
            .asked
            .iter()
            .zip(row)
            .map(|(thing, tag)| format!("{} has {} {}", view.thing(*thing), view.tag, symbol(*tag)))
            .collect();
        readings.add(lock, &answer, steps.join(", "));
        !readings.more
    };
    let done =
        match (&solutions, found.as_slice()) {
            (Ok(1), [only]) => {
                let tag = |(kind, at): &(usize, usize)| {
                    let row = only.get(*kind)?.get(*at)?;
                    only.get(tags)?.iter().position(|other| other == row)
                };
                add(&view.asked.iter().filter_map(tag).collect::<Vec<_>>());
                Ok(())
            }
            // Of several matchings, what is asked can have far fewer tags.
            _ => each_row(
                view.asked.len(),
                size.items,
                &mut |row| {
                    let mut tried = clues.clone();
                    tried.extend(view.asked.iter().zip(row).map(|((kind, at), tag)| {
                        Clue::Same(Item { kind: *kind, at: *at }, Item { kind: tags, at: *tag })
                    }));
                    Ok(size.count(&tried, 1, budget)? == 1)
                },
                &mut add,
            ),
        };
    readings.unproven = done.is_err() || solutions.is_err();
    match solutions {
        Ok(0) => readings.remarks.push("the statements contradict one another".into()),
        Ok(2) if readings.list.len() == 1 => {
            readings.remarks.push("the statements leave something open, though not what is asked".into());
        }
        Ok(1) => {
            for (index, _) in clues.iter().enumerate() {
                let mut fewer = clues.clone();
                fewer.remove(index);
                if size.count(&fewer, 2, budget) == Ok(1) {
                    readings.remarks.push(format!("statement {} follows from the others", index + 1));
                }
            }
        }
        _ => {}
    }
    readings
}
