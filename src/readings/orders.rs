//! Orders: in which orders, and turned in which ways, loose pieces go together one after another.

use std::collections::BTreeSet;

use crate::limits;
use crate::readings::Budget;
use crate::readings::tokens::Spent;

/// A piece as it is laid: which, and turned in which way.
pub type Step = (usize, usize);

/// Called with an order and the state to which it leads; says whether to go on.
pub type Found<'a, S> = dyn FnMut(&[Step], &S) -> bool + 'a;

/// What is laid in order. A state is all that matters of the pieces already laid.
pub struct Orders<'a, S> {
    /// Pieces.
    pub pieces: usize,
    /// Ways in which each may be turned.
    pub ways: usize,
    /// The state once a piece is laid next; none when it cannot be.
    pub next: &'a dyn Fn(&S, Step) -> Option<S>,
    /// Whether two pieces that are both still free look the same: only one of them is then tried.
    pub alike: &'a dyn Fn(Step, Step) -> bool,
}

struct Walk<'a, 'f, S> {
    orders: &'a Orders<'a, S>,
    budget: &'a mut Budget,
    laid: Vec<Step>,
    free: Vec<bool>,
    seen: Option<BTreeSet<(Vec<bool>, S)>>,
    found: &'a mut Found<'f, S>,
}

impl<S: Ord + Clone> Orders<'_, S> {
    /// Calls `found` with every order of all pieces, depth first, in the order of their numbers.
    ///
    /// # Errors
    /// When the budget was spent first, or there are more pieces than [`limits::ORDER_PIECES`].
    pub fn each(&self, start: &S, budget: &mut Budget, found: &mut Found<'_, S>) -> Result<(), Spent> {
        self.walk(start, None, budget, found)
    }

    /// Calls `found` with one order for every state to which all pieces can lead: ways that meet in the same state
    /// with the same pieces left are followed once.
    ///
    /// # Errors
    /// As [`Orders::each`], or when more than [`limits::ORDER_STATES`] states were met.
    pub fn each_end(&self, start: &S, budget: &mut Budget, found: &mut Found<'_, S>) -> Result<(), Spent> {
        self.walk(start, Some(BTreeSet::new()), budget, found)
    }

    fn walk(
        &self,
        start: &S,
        seen: Option<BTreeSet<(Vec<bool>, S)>>,
        budget: &mut Budget,
        found: &mut Found<'_, S>,
    ) -> Result<(), Spent> {
        if self.pieces > limits::ORDER_PIECES {
            return Err(Spent);
        }
        let free = vec![true; self.pieces];
        Walk { orders: self, budget, laid: Vec::new(), free, seen, found }.go(start).map(|_| ())
    }
}

impl<S: Ord + Clone> Walk<'_, '_, S> {
    /// Whether to go on after all that begins with what is laid.
    fn go(&mut self, state: &S) -> Result<bool, Spent> {
        if let Some(seen) = &mut self.seen {
            if seen.len() > limits::ORDER_STATES {
                return Err(Spent);
            }
            if !seen.insert((self.free.clone(), state.clone())) {
                return Ok(true);
            }
        }
        let orders = self.orders;
        if self.laid.len() == orders.pieces {
            return Ok((self.found)(&self.laid, state));
        }
        let mut tried: Vec<Step> = Vec::new();
        for piece in 0..orders.pieces {
            if self.free.get(piece) != Some(&true) {
                continue;
            }
            for way in 0..orders.ways {
                let step = (piece, way);
                if tried.iter().any(|other| (orders.alike)(*other, step)) {
                    continue;
                }
                tried.push(step);
                if !self.budget.step() {
                    return Err(Spent);
                }
                let Some(next) = (orders.next)(state, step) else { continue };
                self.set(piece, false);
                self.laid.push(step);
                let go_on = self.go(&next)?;
                self.laid.pop();
                self.set(piece, true);
                if !go_on {
                    return Ok(false);
                }
            }
        }
        Ok(true)
    }

    fn set(&mut self, piece: usize, free: bool) {
        if let Some(place) = self.free.get_mut(piece) {
            *place = free;
        }
    }
}
