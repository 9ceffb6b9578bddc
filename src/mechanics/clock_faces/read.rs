//! Reads the clocks as guests may: in the order named or in any, by twelve hours or by twenty-four.

use super::{Clock, View};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::readings::{Budget, Readings};

/// Hands of which the shorter is more than this share of the longer are taken for each other (estimate; common
/// practice, no source).
const ALIKE: f64 = 0.85;

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.clocks.len() > limits::WHEELS || view.order.len() > limits::WHEELS {
        all.unproven = true;
        return all;
    }
    for name in &view.order {
        let fit = view.clocks.iter().filter(|clock| clock.name.eq_ignore_ascii_case(name)).count();
        match fit {
            1 => {}
            0 => all.remarks.push(format!("the card names a clock \"{name}\", and there is none")),
            _ => all.remarks.push(format!("{fit} clocks bear the name \"{name}\"")),
        }
    }
    let length = if view.order.is_empty() { view.clocks.len() } else { view.order.len() };
    let mut walk = Walk { view, lock, budget, found: &mut all, length };
    if !walk.go("", &mut Vec::new(), &mut Vec::new()) {
        all.unproven = true;
    }
    all
}

/// What a clock can be taken to say.
fn says(view: &View, clock: &Clock) -> Vec<String> {
    let hour = clock.hour;
    let mut says = vec![hour.to_string()];
    if view.hour_hand > ALIKE && hour != 12 {
        // The long hand at 12 taken for the hour, the other for minutes.
        says.push("12".into());
    }
    if !view.say_twelve {
        let late = if hour == 12 { 0 } else { hour.saturating_add(12) };
        says.extend([late.to_string(), format!("{hour:02}"), format!("{late:02}")]);
    }
    says
}

struct Walk<'a> {
    view: &'a View,
    lock: &'a LockKind,
    budget: &'a mut Budget,
    found: &'a mut Readings,
    length: usize,
}

impl Walk<'_> {
    /// Whether the walk was whole.
    fn go(&mut self, text: &str, used: &mut Vec<usize>, steps: &mut Vec<String>) -> bool {
        if !self.budget.step() {
            return false;
        }
        if used.len() == self.length {
            self.found.add(self.lock, text, steps.join(", then "));
            return true;
        }
        let mut whole = true;
        for (index, clock) in self.view.clocks.iter().enumerate() {
            let named = self.view.order.get(used.len());
            let fits = named.is_none_or(|name| clock.name.eq_ignore_ascii_case(name));
            if used.contains(&index) || !fits {
                continue;
            }
            for said in says(self.view, clock) {
                let longer = format!("{text}{said}");
                let shown = longer.chars().enumerate().all(|(place, symbol)| self.lock.shows(place, symbol));
                let short = self.lock.wheels().is_none_or(|wheels| longer.chars().count() <= wheels);
                if !shown || !short || self.found.more {
                    continue;
                }
                used.push(index);
                steps.push(format!("{} is {said}", clock.name));
                whole &= self.go(&longer, used, steps);
                steps.pop();
                used.pop();
            }
        }
        whole
    }
}

/// The hours in the order in which the clocks are printed.
pub(super) fn slips(view: &View) -> Vec<Slip> {
    let named = |clock: &&Clock| view.order.iter().any(|name| clock.name.eq_ignore_ascii_case(name));
    let hours = view.clocks.iter().filter(named).map(|clock| clock.hour.to_string()).collect();
    vec![(hours, "they took the clocks as they came upon them: the card names the order.")]
}
