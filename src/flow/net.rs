//! The bare question "what opens when", over numbers instead of names.
//!
//! A box opens when what it stands in is open and all its locks are open; a lock opens when one of its openers
//! is to hand; a puzzle is solved when all that it needs is to hand. Nothing is ever used up, so the least
//! fix-point is the whole truth and the order in which things are tried cannot matter.

/// Where a thing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Where {
    /// In the open.
    Open,
    /// Listed, but laid nowhere.
    Nowhere,
    /// In this box.
    Box(usize),
}

/// What opens a lock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Opener {
    /// This puzzle, solved.
    Puzzle(usize),
    /// This thing, to hand: a key.
    Item(usize),
}

/// A box of a [`Net`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NetBox {
    /// Where it stands.
    pub stands: Where,
    /// The locks that shut it; a number that is no lock never opens.
    pub locks: Vec<usize>,
}

/// Boxes, locks, puzzles and things by number.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Net {
    /// The boxes.
    pub boxes: Vec<NetBox>,
    /// For each lock what opens it; one is enough, and none means that nothing does.
    pub locks: Vec<Vec<Opener>>,
    /// For each puzzle the things that it needs, all of them; a number that is no thing is never to hand.
    pub puzzles: Vec<Vec<usize>>,
    /// For each thing where it is.
    pub items: Vec<Where>,
}

impl Net {
    /// The boxes around a place, innermost first; boxes that stand in one another end the walk.
    #[must_use]
    pub fn around(&self, place: Where) -> Vec<usize> {
        let mut found = Vec::new();
        let mut at = place;
        while let Where::Box(index) = at {
            if found.contains(&index) {
                break;
            }
            let Some(item) = self.boxes.get(index) else { break };
            found.push(index);
            at = item.stands;
        }
        found
    }
}
