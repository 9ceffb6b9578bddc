//! What the sheets show when the clear one lies on the other, and whether one of them tells anything alone.

use super::{BLOCK, View};
use crate::kit::LockKind;
use crate::mechanics::picture_grid::read::digits;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

/// Cells of a sheet, true for dark.
type Cells = Vec<Vec<bool>>;

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.measures().is_none() {
        all.remarks.push("the two sheets are not of one size".into());
        return all;
    }
    let (under, over) = (cells(&view.under), cells(&view.over));
    let alone = half(&under) == Some(true) && half(&over) == Some(true);
    let laid = add(&mut all, "laid on one another", &shown(&lay(&under, &over)), lock, budget);
    if !laid {
        all.remarks.push("laid on one another, the sheets show something that is no digit".into());
    }
    // Half of the cells of every block dark: then a sheet by itself is noise, whatever the picture.
    if !alone {
        all.remarks.push("on one of the sheets, not every block of four cells has two dark ones".into());
        for (sheet, cells) in [("the paper sheet alone", &under), ("the clear sheet alone", &over)] {
            for (way, few) in [("its dark places", false), ("its light places", true)] {
                add(&mut all, &format!("{sheet}, {way}"), &uneven(cells, few), lock, budget);
            }
        }
    }
    // The corner marks and the rule say how the clear sheet lies; digits in another way would still mislead.
    let turned: Cells = over.iter().rev().map(|row| row.iter().rev().copied().collect()).collect();
    let flipped = |cells: &Cells| -> Cells { cells.iter().map(|row| row.iter().rev().copied().collect()).collect() };
    let ways = [
        ("upside down", turned.clone()),
        ("with its back up", flipped(&over)),
        ("turned over and upside down", flipped(&turned)),
    ];
    for (way, over) in ways {
        let mut there = Readings::default();
        if add(&mut there, way, &shown(&lay(&under, &over)), lock, budget) && !there.list.is_empty() {
            all.remarks.push(format!("with the clear sheet {way}, digits stand out as well"));
        }
    }
    all
}

fn cells(sheet: &[String]) -> Cells {
    sheet.iter().map(|row| row.chars().map(|cell| cell == '#').collect()).collect()
}

fn lay(under: &Cells, over: &Cells) -> Cells {
    under.iter().zip(over).map(|(a, b)| a.iter().zip(b).map(|(a, b)| *a || *b).collect()).collect()
}

/// How many cells of each block are dark.
fn blocks(cells: &Cells) -> Vec<Vec<usize>> {
    let count = |rows: &[Vec<bool>], col: usize| {
        rows.iter().flat_map(|row| row.iter().skip(col * BLOCK).take(BLOCK)).filter(|dark| **dark).count()
    };
    cells
        .chunks(BLOCK)
        .map(|rows| (0..rows.first().map_or(0, Vec::len) / BLOCK).map(|col| count(rows, col)).collect())
        .collect()
}

/// Whether every block is half dark; none for a sheet without blocks.
fn half(cells: &Cells) -> Option<bool> {
    let blocks = blocks(cells);
    blocks.first()?;
    Some(blocks.iter().flatten().all(|dark| *dark * 2 == BLOCK * BLOCK))
}

/// The points where all of the block is dark.
fn shown(cells: &Cells) -> Cells {
    blocks(cells).iter().map(|row| row.iter().map(|dark| *dark == BLOCK * BLOCK).collect()).collect()
}

/// The points whose block is darker than half, or with `few` lighter.
fn uneven(cells: &Cells, few: bool) -> Cells {
    let odd = |dark: &usize| if few { dark * 2 < BLOCK * BLOCK } else { dark * 2 > BLOCK * BLOCK };
    blocks(cells).iter().map(|row| row.iter().map(odd).collect()).collect()
}

/// Reads a picture as digits between blank rows and columns, row by row; whether each part of it is one.
fn add(all: &mut Readings, way: &str, picture: &Cells, lock: &LockKind, budget: &mut Budget) -> bool {
    let (mut marks, mut cues) = (Vec::new(), Vec::new());
    for part in parted(picture) {
        let label = format!("picture {}", cues.len() + 1);
        let first = marks.len();
        marks.extend(digits(&part).iter().map(|digit| Mark::new(format!("{label} as {digit}"), *digit)));
        cues.push(Cue { label, marks: (first..marks.len()).collect() });
    }
    let whole = !cues.is_empty() && cues.iter().all(|cue| !cue.marks.is_empty());
    let found = read(&marks, &Order::Cued(cues), lock, budget);
    for reading in found.list {
        all.add(lock, &reading.answer, format!("{way}: {}", reading.why));
    }
    all.more |= found.more;
    all.unproven |= found.unproven;
    whole
}

/// The parts of a picture: between its blank rows, and in each between its blank columns.
fn parted(picture: &Cells) -> Vec<Cells> {
    picture
        .chunk_by(|a, b| a.contains(&true) == b.contains(&true))
        .filter(|rows| rows.iter().any(|row| row.contains(&true)))
        .flat_map(beside)
        .collect()
}

/// The parts of rows between their blank columns.
fn beside(picture: &[Vec<bool>]) -> Vec<Cells> {
    let width = picture.first().map_or(0, Vec::len);
    let inked = |col: usize| picture.iter().any(|row| row.get(col) == Some(&true));
    let columns: Vec<usize> = (0..width).collect();
    columns
        .chunk_by(|a, b| inked(*a) == inked(*b))
        .filter(|run| run.first().is_some_and(|col| inked(*col)))
        .map(|run| {
            let part = |row: &Vec<bool>| run.iter().filter_map(|col| row.get(*col).copied()).collect();
            picture.iter().map(part).collect()
        })
        .collect()
}
