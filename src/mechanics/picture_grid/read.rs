use std::collections::BTreeSet;

use super::glyphs::{SHAPES, Shows};
use super::{Panel, View};
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

/// Cells in which a picture may differ from a symbol and still be taken for it, when no symbol is met exactly.
const NEAR: usize = 2;

/// What each panel can be taken to show, over all pictures that its runs allow; panels in the order of their
/// numbers.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let (mut marks, mut cues, mut remarks) = (Vec::new(), Vec::new(), Vec::new());
    let mut spent = false;
    for (index, panel) in view.panels.iter().enumerate() {
        let label = format!("panel {}", index + 1);
        let runs = panel.runs();
        if runs.rows.len() > limits::PANEL_CELLS || runs.cols.len() > limits::PANEL_CELLS {
            remarks.push(format!("{label} is larger than {} cells", limits::PANEL_CELLS));
            continue;
        }
        let (mut pictures, mut shown) = (0, BTreeSet::new());
        let done = runs.each_from(panel.start(), budget, &mut |picture| {
            pictures += 1;
            shown.extend(symbols(view.shows, picture));
            pictures < limits::PANEL_PICTURES
        });
        spent |= done.is_err() || pictures >= limits::PANEL_PICTURES;
        match pictures {
            0 => remarks.push(format!("{label} can be filled in no way")),
            1 => remarks.extend(guess(panel).then(|| format!("{label} needs a guess: lines alone leave cells open"))),
            _ => remarks.push(format!("{label} can be filled in more than one way")),
        }
        if pictures > 0 && shown.is_empty() {
            remarks.push(format!("{label} shows no {}", view.shows.word()));
        }
        let first = marks.len();
        marks.extend(shown.iter().map(|symbol| Mark::new(format!("{label} as {symbol}"), *symbol)));
        cues.push(Cue { label, marks: (first..marks.len()).collect() });
    }
    let mut readings = read(&marks, &Order::Cued(cues), lock, budget);
    readings.unproven |= spent;
    readings.remarks = remarks;
    readings
}

fn guess(panel: &Panel) -> bool {
    panel.runs().looks(panel.start()).is_some_and(|looks| looks.open > 0)
}

/// The digits that a picture can be taken for. Blank rows and columns about it do not count.
#[must_use]
pub fn digits(picture: &[Vec<bool>]) -> Vec<char> {
    symbols(Shows::Digits, picture)
}

/// The symbols that a picture can be taken for: those it is, or else those that it nearly is.
fn symbols(shows: Shows, picture: &[Vec<bool>]) -> Vec<char> {
    let picture = trimmed(picture);
    let mut best: Vec<(usize, char)> = Vec::new();
    for shape in SHAPES {
        for symbol in shows.symbols() {
            let glyph = trimmed(&shows.picture(shape, symbol).unwrap_or_default());
            if let Some(apart) = apart(&picture, &glyph) {
                best.push((apart, symbol));
            }
        }
    }
    let exact = best.iter().any(|(apart, _)| *apart == 0);
    best.retain(|(apart, _)| if exact { *apart == 0 } else { *apart <= NEAR });
    best.into_iter().map(|(_, symbol)| symbol).collect()
}

/// The picture without blank rows and columns at its edges.
fn trimmed(picture: &[Vec<bool>]) -> Vec<Vec<bool>> {
    let rows: Vec<&Vec<bool>> = span(picture, |row| row.contains(&true));
    let width = rows.iter().map(|row| row.len()).max().unwrap_or(0);
    let inked = |col: &usize| rows.iter().any(|row| row.get(*col) == Some(&true));
    let first = (0..width).find(inked).unwrap_or(0);
    let last = (0..width).rev().find(inked).map_or(0, |col| col + 1);
    rows.iter().map(|row| (first..last).map(|col| row.get(col).copied().unwrap_or(false)).collect()).collect()
}

/// The items from the first to the last that passes.
fn span<T>(items: &[T], passes: impl Fn(&T) -> bool) -> Vec<&T> {
    let first = items.iter().position(&passes).unwrap_or(items.len());
    let last = items.iter().rposition(&passes).map_or(first, |at| at + 1);
    items.iter().skip(first).take(last - first).collect()
}

/// In how many cells two pictures of one size differ.
fn apart(a: &[Vec<bool>], b: &[Vec<bool>]) -> Option<usize> {
    let size = |picture: &[Vec<bool>]| (picture.len(), picture.first().map_or(0, Vec::len));
    (size(a) == size(b)).then(|| a.iter().flatten().zip(b.iter().flatten()).filter(|(a, b)| a != b).count())
}
