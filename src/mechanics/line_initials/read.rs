//! Reads the letters at the edges of lines and paragraphs.

use super::{By, View};
use crate::kit::LockKind;
use crate::mechanics::fixed::Fixed;
use crate::mechanics::number_words;
use crate::readings::{Budget, Readings};

/// The first letters, in capitals; signs before them do not count.
pub(super) fn initials(text: &Fixed, by: By) -> Vec<char> {
    match by {
        By::Lines => text.lines().filter_map(first).collect(),
        By::Paragraphs => text.paragraphs.iter().filter_map(|lines| first(lines.first()?)).collect(),
    }
}

fn first(line: &str) -> Option<char> {
    line.chars().find(|c| c.is_alphanumeric()).and_then(|c| c.to_uppercase().next())
}

fn last(line: &str) -> Option<char> {
    line.chars().rev().find(|c| c.is_alphanumeric()).and_then(|c| c.to_uppercase().next())
}

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let (lines, paragraphs) = ("the first letters of the lines", "the first letters of the paragraphs");
    let mut ways = Vec::new();
    // Bold first letters say as much as a rule.
    let stated = view.rule.or(view.bold);
    if stated != Some(By::Paragraphs) {
        ways.push((lines, initials(&view.text, By::Lines)));
    }
    if stated != Some(By::Lines) {
        ways.push((paragraphs, initials(&view.text, By::Paragraphs)));
    }
    if stated.is_none() {
        ways.push(("the last letters of the lines", view.text.lines().filter_map(last).collect()));
    }
    let mut all = Readings::default();
    for (label, letters) in ways {
        number_words::add(&letters, label, lock, budget, &mut all);
    }
    if view.rule.is_none() {
        all.remarks.push("nothing on the sheet says that first letters count".into());
    }
    all
}
