use std::collections::BTreeMap;

use super::{BoxDef, Kit, Lock, Note, Prop, Puzzle, Spot};
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};

/// Where each item of a kit stands in its list, for those who look up every item of a large kit.
///
/// It answers as [`Kit::lock`] and the others do, whatever kit it is asked about; it is quick for the kit that it was
/// made of.
#[derive(Clone, Debug, Default)]
pub struct Positions {
    notes: BTreeMap<NoteId, usize>,
    spots: BTreeMap<SpotId, usize>,
    boxes: BTreeMap<BoxId, usize>,
    locks: BTreeMap<LockId, usize>,
    props: BTreeMap<PropId, usize>,
    puzzles: BTreeMap<PuzzleId, usize>,
}

macro_rules! lookups {
    ($($name:ident: $field:ident, $id:ty => $item:ty;)*) => {
        impl Positions {
            /// The positions of the items of `kit`; of several with one id that of the first.
            #[must_use]
            pub fn of(kit: &Kit) -> Self {
                let mut positions = Self::default();
                $(for (at, item) in kit.$field.iter().enumerate() {
                    positions.$field.entry(item.id.clone()).or_insert(at);
                })*
                positions
            }

            $(
                #[doc = concat!("As [`Kit::", stringify!($name), "`].")]
                #[must_use]
                pub fn $name<'k>(&self, kit: &'k Kit, id: &$id) -> Option<&'k $item> {
                    let known = self.$field.get(id).and_then(|at| kit.$field.get(*at));
                    match known.filter(|item| item.id == *id) {
                        Some(item) => Some(item),
                        None => kit.$name(id),
                    }
                }
            )*
        }
    };
}

impl Positions {
    /// Where a puzzle stands among the puzzles.
    #[must_use]
    pub fn at(&self, puzzle: &PuzzleId) -> Option<usize> {
        self.puzzles.get(puzzle).copied()
    }
}

lookups! {
    note: notes, NoteId => Note;
    spot: spots, SpotId => Spot;
    box_def: boxes, BoxId => BoxDef;
    lock: locks, LockId => Lock;
    prop: props, PropId => Prop;
    puzzle: puzzles, PuzzleId => Puzzle;
}
