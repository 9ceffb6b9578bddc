use std::collections::BTreeSet;

use super::View;
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::readings::occurrences::{Hit, placements};
use crate::readings::{Budget, Readings};

/// The digits in words, as they are spelled out by the letters left over.
const DIGITS: [&str; 10] = ["ZERO", "ONE", "TWO", "THREE", "FOUR", "FIVE", "SIX", "SEVEN", "EIGHT", "NINE"];

/// What the letters left over must spell: digits in words, letters as they are.
pub(super) fn spelled(answer: &[char]) -> Option<String> {
    if answer.iter().all(char::is_ascii_digit) {
        return answer.iter().map(|digit| DIGITS.get(digit.to_digit(10)? as usize).copied()).collect();
    }
    answer.iter().all(char::is_ascii_uppercase).then(|| answer.iter().collect())
}

/// For every choice of places of the listed words, what the letters left over spell.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let cols = view.rows.iter().map(Vec::len).max().unwrap_or(0);
    if view.rows.len() > limits::SEARCH_SIDE || cols > limits::SEARCH_SIDE || view.words.len() > limits::SEARCH_WORDS {
        readings.unproven = true;
        return readings;
    }
    let grid = view.grid();
    let mut choices: Vec<(&str, Vec<Hit>)> = Vec::new();
    for word in &view.words {
        let letters: Vec<char> = word.chars().collect();
        let found = placements(&grid, &letters);
        match found.len() {
            0 => readings.remarks.push(format!("the word {word} stands nowhere")),
            1 => {}
            count => readings.remarks.push(format!("the word {word} stands in {count} places")),
        }
        // A guest who does not find a word goes on without it.
        if !found.is_empty() {
            choices.push((word, found));
        }
    }
    let mut taken = vec![0; choices.len()];
    for looked_at in 0.. {
        if looked_at >= limits::SEARCH_CHOICES || !budget.step() {
            readings.unproven = true;
            break;
        }
        let hits: Vec<&Hit> = choices.iter().zip(&taken).filter_map(|((_, found), at)| found.get(*at)).collect();
        let why: Vec<String> = choices
            .iter()
            .zip(&hits)
            .filter(|((_, found), _)| found.len() > 1)
            .map(|((word, _), hit)| format!("{word} found at row {}, column {}", hit.start.0 + 1, hit.start.1 + 1))
            .collect();
        let left = left_over(view, &hits);
        for answer in answers(&left, lock) {
            let why = if why.is_empty() { format!("left over: {left}") } else { format!("{}: {left}", why.join(", ")) };
            readings.add(lock, &answer, why);
        }
        if !next(&mut taken, &choices) {
            break;
        }
    }
    readings
}

/// The next choice of places; false after the last.
fn next(taken: &mut [usize], choices: &[(&str, Vec<Hit>)]) -> bool {
    for (at, (_, found)) in taken.iter_mut().zip(choices) {
        *at += 1;
        if *at < found.len() {
            return true;
        }
        *at = 0;
    }
    false
}

/// The letters that no hit covers, in reading order.
fn left_over(view: &View, hits: &[&Hit]) -> String {
    let covered: BTreeSet<(usize, usize)> = hits.iter().flat_map(|hit| hit.cells.iter().copied()).collect();
    let mut left = String::new();
    for (row, line) in view.rows.iter().enumerate() {
        for (col, letter) in line.iter().enumerate() {
            if !covered.contains(&(row, col)) {
                left.extend(letter.iter());
            }
        }
    }
    left
}

/// What the letters can be set as: themselves, or the digits that they spell. No digit's word begins another's, so
/// there is one way at most to part them.
fn answers(left: &str, lock: &LockKind) -> Vec<String> {
    let mut answers = Vec::new();
    if !matches!(lock, LockKind::Digits(_)) {
        answers.push(left.to_owned());
    }
    let mut rest = left;
    let mut digits = String::new();
    while let Some((digit, word)) = DIGITS.iter().enumerate().find(|(_, word)| rest.starts_with(**word)) {
        rest = rest.get(word.len()..).unwrap_or("");
        digits.push_str(&digit.to_string());
    }
    if rest.is_empty() && !digits.is_empty() {
        answers.push(digits);
    }
    answers
}

/// What is left, read column by column.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let grid = view.grid();
    let hits: Vec<Hit> = view
        .words
        .iter()
        .filter_map(|word| placements(&grid, &word.chars().collect::<Vec<char>>()).into_iter().next())
        .collect();
    let covered: BTreeSet<(usize, usize)> = hits.iter().flat_map(|hit| hit.cells.iter().copied()).collect();
    let mut left: Vec<(usize, usize, char)> = Vec::new();
    for (row, line) in view.rows.iter().enumerate() {
        let letters = line.iter().enumerate().filter_map(|(col, letter)| Some((col, (*letter)?)));
        left.extend(letters.filter(|(col, _)| !covered.contains(&(row, *col))).map(|(col, letter)| (col, row, letter)));
    }
    left.sort_unstable();
    let down = left.into_iter().map(|(_, _, letter)| letter).collect();
    vec![(down, "they read what is left column by column: say that one reads as in a book.")]
}
