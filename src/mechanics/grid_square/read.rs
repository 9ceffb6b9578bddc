//! Reads the message by the square, row before column and, where nothing says so, the other way as well.

use super::{GridSquare, Message, View};
use crate::kit::LockKind;
use crate::mechanics::slips::{self, Slip};
use crate::mechanics::spelled::tries;
use crate::readings::tokens::{self, Cue, Mark, Order};
use crate::readings::{Budget, Readings};

/// The two ways to take a pair: in words, and whether the row comes first.
const WAYS: [(&str, bool); 2] = [("row before column", true), ("column before row", false)];

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    for (label, row_first) in WAYS.into_iter().take(if view.rule { 1 } else { 2 }) {
        let messages = match &view.message {
            Message::Pairs(pairs) => vec![(label.to_owned(), by_pairs(view, pairs, row_first))],
            Message::Word(word) => tries(word, lock.wheels().map(|wheels| wheels / 2))
                .into_iter()
                .map(|(name, spelled)| (format!("{name}, {label}"), by_letters(view, &spelled, row_first)))
                .collect(),
        };
        for (label, (marks, cues)) in messages {
            if cues.is_empty() {
                continue;
            }
            let found = tokens::read(&marks, &Order::Cued(cues), lock, budget);
            for reading in found.list {
                all.add(lock, &reading.answer, format!("{label}: {}", reading.why));
            }
            all.more |= found.more;
            all.unproven |= found.unproven;
        }
    }
    remark(view, &mut all);
    all
}

fn by_letters(view: &View, spelled: &[char], row_first: bool) -> (Vec<Mark>, Vec<Cue>) {
    let (mut marks, mut cues) = (Vec::new(), Vec::new());
    for letter in spelled {
        let first = marks.len();
        for (row, column) in view.places(*letter) {
            let text = if row_first { format!("{row}{column}") } else { format!("{column}{row}") };
            marks.push(Mark::new(format!("{letter} is {text}"), text));
        }
        cues.push(Cue { label: format!("the letter {letter}"), marks: (first..marks.len()).collect() });
    }
    (marks, cues)
}

fn by_pairs(view: &View, pairs: &[String], row_first: bool) -> (Vec<Mark>, Vec<Cue>) {
    let (mut marks, mut cues) = (Vec::new(), Vec::new());
    for pair in pairs {
        let first = marks.len();
        let mut digits = pair.chars();
        if let (Some(a), Some(b)) = (digits.next(), digits.next()) {
            let (row, column) = if row_first { (a, b) } else { (b, a) };
            let cell = view.cell(row, column).unwrap_or_default();
            marks.extend(cell.chars().map(|letter| Mark::new(format!("{pair} is {letter}"), letter)));
        }
        cues.push(Cue { label: format!("the pair {pair}"), marks: (first..marks.len()).collect() });
    }
    (marks, cues)
}

fn remark(view: &View, all: &mut Readings) {
    match &view.message {
        Message::Word(word) => {
            for letter in crate::mechanics::spelled::letters(word) {
                if view.places(letter).is_empty() {
                    all.remarks.push(format!("the letter {letter} of {word} is not in the square"));
                }
            }
        }
        Message::Pairs(pairs) => {
            for pair in pairs {
                let mut digits = pair.chars();
                let cell = digits.next().zip(digits.next()).and_then(|(row, column)| view.cell(row, column));
                match cell.map(str::len) {
                    None => all.remarks.push(format!("the pair {pair} leads to no cell of the square")),
                    Some(1) => {}
                    Some(_) => all.remarks.push(format!("the pair {pair} leads to a cell with more than one letter")),
                }
            }
        }
    }
}

/// The column before the row.
pub(super) fn slips(view: &View, lock: &LockKind) -> Vec<Slip> {
    let unruled = View { rule: false, ..view.clone() };
    slips::without(&GridSquare, &unruled, lock, "they take the column before the row: the row's digit comes first.")
}
