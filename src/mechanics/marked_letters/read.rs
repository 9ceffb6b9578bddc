//! Reads a sign and its pointer card as guests do.

use super::{Says, View};
use crate::kit::LockKind;
use crate::mechanics::slips::Slip;
use crate::readings::tokens::{self, Cue, Mark, Order};
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    let ways = ways(view);
    let several = ways.len() > 1;
    for (way, letters) in ways {
        let (marks, order) = cues(view, &letters);
        if marks.is_empty() {
            continue;
        }
        let found = tokens::read(&marks, &order, lock, budget);
        for reading in found.list {
            let why = if several { format!("{way}: {}", reading.why) } else { reading.why };
            all.add(lock, &reading.answer, why);
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
    }
    remark(view, &mut all);
    all
}

/// The first letters of a line's words, in capitals. A word is what stands between spaces.
pub(super) fn initials(line: &str) -> Vec<char> {
    line.split_whitespace().filter_map(|word| word.chars().find(|c| c.is_alphabetic())).flat_map(capital).collect()
}

/// The letters by the way that the mechanic means.
pub(super) fn first_way(says: &Says) -> Vec<char> {
    match says {
        Says::Letters(letters) => letters.clone(),
        Says::Line(line) => initials(line),
    }
}

fn capital(letter: char) -> impl Iterator<Item = char> {
    letter.to_uppercase()
}

/// Every sequence of letters that the pointer can be taken to name, each with its way in words.
fn ways(view: &View) -> Vec<(&'static str, Vec<char>)> {
    let line = match &view.pointer.says {
        Says::Letters(letters) => return vec![("the letters as listed", letters.clone())],
        Says::Line(line) => line,
    };
    let mut ways = vec![("first letters", initials(line))];
    // "twenty-one": a guest may count one word or two.
    let parted = line.replace(['-', '\u{2010}', '\u{2011}', '\u{2013}', '\u{2014}'], " ");
    ways.push(("first letters, a hyphen parting words", initials(&parted)));
    if !view.pointer.rule {
        let last = line.split_whitespace().filter_map(|word| word.chars().rev().find(|c| c.is_alphabetic()));
        ways.push(("last letters", last.flat_map(capital).collect()));
        ways.push(("every letter", line.chars().filter(|c| c.is_alphabetic()).flat_map(capital).collect()));
    }
    let mut seen: Vec<Vec<char>> = Vec::new();
    ways.retain(|(_, letters)| {
        let new = !letters.is_empty() && !seen.contains(letters);
        if new {
            seen.push(letters.clone());
        }
        new
    });
    ways
}

/// The marks on the sign, and what the named letters say about them.
///
/// A letter that carries no digit gives no cue: there is nothing to read under it. A letter that is named more often
/// than it carries digits may be read again.
fn cues(view: &View, letters: &[char]) -> (Vec<Mark>, Order) {
    let mut marks = Vec::new();
    let mut owners = Vec::new();
    for (line, cells) in view.lines.iter().enumerate() {
        for (column, cell) in cells.iter().enumerate() {
            if let Some(mark) = cell.mark {
                marks.push(Mark::new(place(view, line, column, cell.letter), mark.to_string()));
                owners.push(cell.letter);
            }
        }
    }
    let mut cues: Vec<Cue> = Vec::new();
    for (index, letter) in letters.iter().enumerate() {
        let own: Vec<usize> = (0..owners.len()).filter(|mark| owners.get(*mark) == Some(letter)).collect();
        if own.is_empty() {
            continue;
        }
        let earlier = letters.iter().take(index).filter(|other| *other == letter).count();
        let fitting = match own.get(earlier) {
            Some(next) if view.pointer.equal_rule => vec![*next],
            Some(_) => own,
            None => own.iter().filter_map(|mark| again(&mut marks, *mark)).collect(),
        };
        cues.push(Cue { label: format!("the letter {letter}"), marks: fitting });
    }
    if cues.is_empty() {
        return (Vec::new(), Order::Listed);
    }
    (marks, Order::Cued(cues))
}

/// The same mark once more, for a letter that is named again; answers its place in the list.
fn again(marks: &mut Vec<Mark>, mark: usize) -> Option<usize> {
    let copy = marks.get(mark)?.clone();
    marks.push(copy);
    Some(marks.len() - 1)
}

/// How a guest would point at a letter of the sign.
fn place(view: &View, line: usize, column: usize, letter: char) -> String {
    let Some(cells) = view.lines.get(line) else { return format!("the {letter}") };
    let word: String = {
        let before = cells.iter().take(column).rev().take_while(|cell| cell.letter != ' ').count();
        cells.iter().skip(column - before).take_while(|cell| cell.letter != ' ').map(|cell| cell.letter).collect()
    };
    if view.stands(letter) == 1 {
        return format!("the {letter} of {word}");
    }
    let before = view.lines.iter().take(line).flatten().chain(cells.iter().take(column));
    let nth = before.filter(|cell| cell.letter == letter).count() + 1;
    format!("the {letter} of {word} (number {nth} of its kind)")
}

/// Says what a guest should not have to guess.
fn remark(view: &View, readings: &mut Readings) {
    let mut named = first_way(&view.pointer.says);
    named.sort_unstable();
    named.dedup();
    for letter in named {
        let stands = view.stands(letter);
        let marked = view.cells().filter(|cell| cell.letter == letter && cell.mark.is_some()).count();
        if marked == 0 {
            readings.remarks.push(format!("the letter {letter} is named and carries no digit on the sign"));
        } else if marked < stands {
            readings.remarks.push(format!(
                "the named letter {letter} stands on the sign {stands} times and carries a digit {marked} times"
            ));
        }
    }
}

/// The named digits as they stand on the sign.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let mut named = first_way(&view.pointer.says);
    let mut on_sign = String::new();
    for cell in view.cells() {
        let (Some(mark), Some(at)) = (cell.mark, named.iter().position(|letter| *letter == cell.letter)) else {
            continue;
        };
        named.remove(at);
        on_sign.push(mark);
    }
    vec![(on_sign, "they took the digits as they stand on the sign: the card gives the order.")]
}
