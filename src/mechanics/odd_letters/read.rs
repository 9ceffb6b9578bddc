//! Reads the letters that are set differently: all of them, and those of each kind.

use super::{Style, View};
use crate::kit::LockKind;
use crate::mechanics::number_words::WORDS;
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let odd: Vec<(char, Style)> = view.odd().collect();
    let all: String = odd.iter().map(|(letter, _)| *letter).collect();
    let mut ways = vec![("all odd letters", all)];
    let mut kinds: Vec<Style> = odd.iter().map(|(_, style)| *style).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let mut found = Readings::default();
    if kinds.len() > 1 {
        found.remarks.push("letters are set differently in more than one way".into());
        for kind in &kinds {
            let label = match kind {
                Style::Bold => "the bold letters",
                Style::Italic => "the sloping letters",
                Style::Both => "the bold and sloping letters",
                Style::Plain => continue,
            };
            ways.push((label, odd.iter().filter(|(_, style)| style == kind).map(|(letter, _)| *letter).collect()));
        }
    }
    if kinds.contains(&Style::Italic) {
        found.remarks.push("single sloping letters are hard to see in print".into());
    }
    if !view.rule {
        found.remarks.push("nothing on the card says that some letters are odd".into());
    }
    for (label, letters) in ways {
        found.add(lock, &letters, label);
        if !numbers(&letters, &mut String::new(), label, lock, budget, &mut found) {
            found.unproven = true;
        }
    }
    found
}

/// Adds every way to part the letters into number words; false when the budget was spent.
fn numbers(
    rest: &str,
    digits: &mut String,
    label: &str,
    lock: &LockKind,
    budget: &mut Budget,
    found: &mut Readings,
) -> bool {
    if !budget.step() {
        return false;
    }
    if rest.is_empty() {
        found.add(lock, digits, format!("{label}, as number words"));
        return true;
    }
    let mut whole = true;
    for (digit, word) in ('0'..='9').zip(WORDS) {
        let room = lock.wheels().is_none_or(|wheels| digits.len() < wheels);
        if let (true, Some(rest)) = (room, rest.strip_prefix(word)) {
            digits.push(digit);
            whole &= numbers(rest, digits, label, lock, budget, found);
            digits.pop();
        }
    }
    whole
}
