//! Reads a strip as guests do: by lengths, not by what the author meant.

use super::{MorseStrip, View};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::codes::morse::{BETWEEN, DASH, Run, WITHIN};
use crate::mechanics::signs::Entry;
use crate::mechanics::slips::{self, Slip};
use crate::readings::{Budget, Readings};

/// A sign of the strip: what it can be taken for, and whether a group can end after it.
struct Element {
    dot: bool,
    dash: bool,
    joins: bool,
    parts: bool,
}

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.runs.len() > limits::STRIP_RUNS {
        all.unproven = true;
        return all;
    }
    let there = elements(&view.runs);
    let mut ways = vec![("as the strip lies", there)];
    if !view.start_mark {
        let back: Vec<Run> = view.runs.iter().rev().copied().collect();
        ways.push(("with the strip the other way round", elements(&back)));
    }
    for (label, elements) in ways {
        let mut walk = Walk { key: &view.key, lock, budget: &mut *budget, found: &mut all, label };
        if !walk.go(&elements, "", "", &mut Vec::new()) {
            all.unproven = true;
        }
    }
    for group in groups(view) {
        if !view.key.iter().any(|entry| entry.sign == group) {
            all.remarks.push(format!("the group {group} is not on the key card"));
        }
    }
    all
}

fn elements(runs: &[Run]) -> Vec<Element> {
    // With no wider gap anywhere, any gap may be meant to part two groups.
    let wide = runs.iter().any(|run| !run.ink && run.units > WITHIN);
    let mut elements: Vec<Element> = Vec::new();
    for run in runs {
        if run.ink {
            elements.push(Element { dot: run.units < DASH, dash: run.units > 1, joins: true, parts: !wide });
        } else if let Some(last) = elements.last_mut() {
            last.joins = run.units < BETWEEN;
            last.parts = run.units > WITHIN || !wide;
        }
    }
    elements
}

/// The groups by their plain reading: lengths under 2 are short, gaps from 2 up part.
pub(super) fn groups(view: &View) -> Vec<String> {
    let mut groups = vec![String::new()];
    for run in &view.runs {
        match (run.ink, groups.last_mut()) {
            (true, Some(group)) => group.push(if run.units < 2 { '.' } else { '-' }),
            (false, _) if run.units > WITHIN => groups.push(String::new()),
            _ => {}
        }
    }
    groups.retain(|group| !group.is_empty());
    groups
}

struct Walk<'a> {
    key: &'a [Entry],
    lock: &'a LockKind,
    budget: &'a mut Budget,
    found: &'a mut Readings,
    label: &'static str,
}

impl Walk<'_> {
    /// Whether the walk was whole; `text` is what was read so far, `group` the group that is open.
    fn go(&mut self, rest: &[Element], text: &str, group: &str, parted: &mut Vec<String>) -> bool {
        if !self.budget.step() {
            return false;
        }
        if self.found.more {
            return true;
        }
        let Some((element, rest)) = rest.split_first() else {
            if group.is_empty() {
                self.found.add(self.lock, text, format!("{}: {}", self.label, parted.join(" / ")));
            }
            return true;
        };
        let mut whole = true;
        for (may, sign) in [(element.dot, '.'), (element.dash, '-')] {
            let group = format!("{group}{sign}");
            if !may || !self.key.iter().any(|entry| entry.sign.starts_with(&group)) {
                continue;
            }
            if element.joins && !rest.is_empty() {
                whole &= self.go(rest, text, &group, parted);
            }
            if element.parts || rest.is_empty() {
                let symbols = self.key.iter().filter(|entry| entry.sign == group).map(|entry| entry.symbol);
                for symbol in symbols.collect::<Vec<char>>() {
                    let place = parted.len();
                    if self.lock.wheels().is_some_and(|wheels| place >= wheels) || !self.lock.shows(place, symbol) {
                        continue;
                    }
                    parted.push(group.clone());
                    whole &= self.go(rest, &format!("{text}{symbol}"), "", parted);
                    parted.pop();
                }
            }
        }
        whole
    }
}

/// The strip held upside down.
pub(super) fn slips(view: &View, lock: &LockKind) -> Vec<Slip> {
    let unmarked = View { start_mark: false, ..view.clone() };
    slips::without(&MorseStrip, &unmarked, lock, "they read the row from the wrong end: ask where the start mark is.")
}
