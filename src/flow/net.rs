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

/// What opened in which round. Round 0 is what is to hand before anybody solves anything.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reached {
    /// For each box the round in which it opens; none when it never does.
    pub boxes: Vec<Option<usize>>,
    /// For each lock.
    pub locks: Vec<Option<usize>>,
    /// For each puzzle the round in which it is solved.
    pub puzzles: Vec<Option<usize>>,
    /// For each thing the round in which it comes to hand.
    pub items: Vec<Option<usize>>,
    /// How many rounds there are in which something is solved or opens.
    pub rounds: usize,
}

impl Net {
    /// Plays as fast as can be: in each round all is solved and opened that the end of the last round allows.
    #[must_use]
    pub fn play(&self) -> Reached {
        self.play_with(&[])
    }

    /// As [`Net::play`], with these boxes open from the start, wherever they stand.
    #[must_use]
    pub fn play_with(&self, given: &[usize]) -> Reached {
        let mut reached = Reached {
            boxes: vec![None; self.boxes.len()],
            locks: vec![None; self.locks.len()],
            puzzles: vec![None; self.puzzles.len()],
            items: vec![None; self.items.len()],
            rounds: 0,
        };
        self.settle(&mut reached, given, 0);
        let mut round = 1;
        while self.advance(&mut reached, given, round) {
            reached.rounds = round;
            round += 1;
        }
        reached
    }

    /// One round; false when nothing new was solved or opened.
    fn advance(&self, reached: &mut Reached, given: &[usize], round: usize) -> bool {
        let mut new = false;
        for (puzzle, needs) in self.puzzles.iter().enumerate() {
            if reached.puzzles[puzzle].is_none() && needs.iter().all(|item| had(&reached.items, *item)) {
                reached.puzzles[puzzle] = Some(round);
                new = true;
            }
        }
        for (lock, openers) in self.locks.iter().enumerate() {
            let opens = |opener: &Opener| match opener {
                Opener::Puzzle(puzzle) => had(&reached.puzzles, *puzzle),
                Opener::Item(item) => had(&reached.items, *item),
            };
            if reached.locks[lock].is_none() && openers.iter().any(opens) {
                reached.locks[lock] = Some(round);
                new = true;
            }
        }
        // Which boxes open is judged by what was open before the round, so the list comes before the deed.
        let opening: Vec<usize> = (0..self.boxes.len())
            .filter(|index| reached.boxes[*index].is_none() && self.at_hand(reached, *index))
            .filter(|index| self.boxes[*index].locks.iter().all(|lock| had(&reached.locks, *lock)))
            .collect();
        for index in opening {
            reached.boxes[index] = Some(round);
            new = true;
        }
        self.settle(reached, given, round);
        new
    }

    /// Opens what has no lock, and takes out what lies in open boxes, at no cost in rounds.
    fn settle(&self, reached: &mut Reached, given: &[usize], round: usize) {
        let mut again = true;
        while again {
            again = false;
            for (index, item) in self.boxes.iter().enumerate() {
                let free = given.contains(&index) || (item.locks.is_empty() && self.at_hand(reached, index));
                if free && reached.boxes[index].is_none() {
                    reached.boxes[index] = Some(round);
                    again = true;
                }
            }
        }
        for (item, place) in self.items.iter().enumerate() {
            let open = match place {
                Where::Open => true,
                Where::Nowhere => false,
                Where::Box(index) => had(&reached.boxes, *index),
            };
            if open && reached.items[item].is_none() {
                reached.items[item] = Some(round);
            }
        }
    }

    fn at_hand(&self, reached: &Reached, index: usize) -> bool {
        match self.boxes[index].stands {
            Where::Open => true,
            Where::Nowhere => false,
            Where::Box(outer) => had(&reached.boxes, outer),
        }
    }

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

/// Whether a numbered thing is to hand; a number that is none is not.
pub(super) fn had(list: &[Option<usize>], index: usize) -> bool {
    list.get(index).is_some_and(Option::is_some)
}
