//! The row as a person lays it: look through the pieces that are left for one that fits.

use super::View;
use super::read::next;
use crate::limits;
use crate::mechanics::work::{Work, counted};
use crate::readings::Budget;

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
        "{}, {} compared. More than one piece fits at {}; {} in vain.",
        counted(count, "piece"),
        counted(look.compared, "half").replace("halfs", "halves"),
        counted(look.forks, "place"),
        match vain {
            0 => "none is laid".to_owned(),
            1 => "one is laid".to_owned(),
            _ => format!("{vain} are laid"),
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
