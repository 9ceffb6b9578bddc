//! The row as a person lays it: look through the pieces that are left for one that fits.

use super::View;
use super::read::next;
use crate::limits;
use crate::mechanics::work::{Work, at_places};
use crate::readings::Budget;
use crate::script::capital;

/// Halves that are compared until the row lies, over all rows that can be begun, and pieces that are laid in vain.
pub(super) fn work(view: &View) -> Option<Work> {
    let (count, first) = (view.pieces.len(), view.first?);
    if count > limits::DOMINOES {
        return None;
    }
    let (a, b) = view.pieces.get(first).copied()?;
    let mut used = vec![false; count];
    used[first] = true;
    let mut look = Look { view, budget: Budget::new(limits::GRID_STEPS), compared: 0, laid: 0, forks: 0 };
    let ends = if view.arrows || a == b { vec![b] } else { vec![a, b] };
    for open in ends {
        look.on(open, &mut used);
    }
    let vain = (look.laid + 1).saturating_sub(count);
    let says = format!(
        "At the end of the row guests look through the pieces that are left for one that fits. {}{}",
        match look.forks {
            0 => "There is never a choice.".to_owned(),
            forks => format!("{} more than one does.", capital(&at_places(forks))),
        },
        match vain {
            0 => String::new(),
            1 => " A piece may have to be taken up again.".to_owned(),
            _ => format!(" Up to {vain} pieces may have to be taken up again."),
        },
    );
    Some(Work::new(look.compared, says))
}

struct Look<'a> {
    view: &'a View,
    budget: Budget,
    compared: usize,
    laid: usize,
    forks: usize,
}

impl Look<'_> {
    fn on(&mut self, open: u8, used: &mut Vec<bool>) {
        // With arrows a person looks at one half of a piece, without at both.
        let left = used.iter().filter(|used| !**used).count();
        self.compared += if self.view.arrows { left } else { 2 * left };
        let fitting = next(self.view, open, used);
        self.forks += usize::from(fitting.len() > 1);
        for (at, open) in fitting {
            if !self.budget.step() {
                return;
            }
            self.laid += 1;
            used[at] = true;
            self.on(open, used);
            used[at] = false;
        }
    }
}
