//! What an author writes: one [`Kit`], kept in `kit.ron` with its pictures beside it in `art/`.
//!
//! The doc comments of the types here are also the text of `inklatch explain kit`.

mod dressed;
pub mod edit;
pub mod file;
mod hints;
mod level;
mod lock;
mod making;
pub mod material;
mod meant;
mod place;
mod plays;
mod positions;
mod preparing;
mod printed;
mod puzzle;
mod rename;
mod revision;
pub mod ron_merge;
mod ron_read;
pub mod ron_text;
mod setup_fields;
mod text;
mod texts;

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

pub use dressed::{Dressed, Kept, OldHint, OldWord};
pub use hints::HintLadder;
pub use level::{LevelChange, LevelRules, Levels};
pub use lock::{Lock, LockKind};
pub use making::{Flip, Making, TokenMake};
pub use place::{Apart, BoxDef, Finish, Lying, Place, Prop, PropRole, Spot};
pub use plays::{PLAYS_FORMAT, Play, Plays, PuzzlePlay};
pub use positions::Positions;
pub use preparing::{HowMany, OwnStep};
pub use printed::{Edge, Form, Printed};
pub use puzzle::{Puzzle, RawSetup};
pub use rename::rename;
pub use revision::{Day, Revision};
pub use text::{Letter, Look, Note, NoteKind, WordForms};
pub use texts::visit_texts;

use crate::ids::{BoxId, KitId, LockId, NoteId, PropId, PuzzleId, SpotId, ThemeId};

/// The newest kit format that this program writes.
pub const FORMAT: u32 = 1;

/// All that one author publishes for one party.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kit {
    /// Format number of the file, so that later programs can read it.
    pub format: u32,
    /// Stable name, used in file names: lower-case letters, digits, hyphens.
    pub id: KitId,
    /// Title as printed.
    pub title: String,
    /// Who made it, as printed.
    pub author: String,
    /// What the buyer may do with it, in a sentence.
    #[serde(default)]
    pub terms: String,
    /// The theme's id (`inklatch themes` lists them); looked for in the kit's own `themes/`, the author's theme folder, then the built-in ones.
    pub theme: ThemeId,
    /// Least and most guests.
    pub players: (u8, u8),
    /// Youngest and oldest age meant; the youngest bounds the cautions and the reading age.
    pub ages: (u8, u8),
    /// How long the play is meant to take, in minutes: one figure for all levels. Puzzles have minutes of their own at each
    /// level.
    pub minutes: u16,
    /// Minutes that the host has for preparing, from the first sheet to the guests' arrival, drying included.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub prep_minutes: Option<u32>,
    /// The seed of every arrangement that chance makes; another number arranges anew.
    #[serde(default)]
    pub seed: u64,
    /// The story in two or three sentences for the host, with no answers.
    #[serde(default)]
    pub brief: String,
    /// The story letter.
    pub letter: Letter,
    /// The smaller texts: notes, signs, the closing card.
    #[serde(default)]
    pub notes: Vec<Note>,
    /// Places in the room.
    #[serde(default)]
    pub spots: Vec<Spot>,
    /// Boxes, each shut by one or more locks.
    #[serde(default)]
    pub boxes: Vec<BoxDef>,
    /// Locks.
    #[serde(default)]
    pub locks: Vec<Lock>,
    /// Props that are not part of a puzzle's own setup: tools, keys, decoration, decoys.
    #[serde(default)]
    pub props: Vec<Prop>,
    /// The puzzles.
    #[serde(default)]
    pub puzzles: Vec<Puzzle>,
    /// Things that must not lie at one place; some mechanics add pairs of their own, which may lie together where the list
    /// says so.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub apart: Vec<Apart>,
    /// What the end of the party is: the box that must open and the card in it.
    pub finish: Finish,
    /// Words that fill slots such as `{{ keeper }}`: added to the theme's, or in their place.
    #[serde(default)]
    pub words: BTreeMap<String, WordForms>,
    /// Who made what the kit brings itself, and under which licence: pictures by their path, fonts by their family.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub credits: BTreeMap<String, String>,
    /// Changes to the theme's look for this kit only.
    #[serde(default)]
    pub look: Look,
    /// What each play level lays open.
    #[serde(default)]
    pub levels: Levels,
    /// What the kit brought along from the theme before; written by the program when it is put into another.
    #[serde(default, skip_serializing_if = "Dressed::is_empty")]
    pub dressed: Dressed,
    /// How the printed pieces are made.
    #[serde(default, skip_serializing_if = "is_default")]
    pub making: Making,
    /// What the host says at the start, a line each, in place of the line about what is in play; the rules that hold at
    /// every party follow.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub opening: Vec<String>,
    /// Steps of the host's preparation that belong to no puzzle: baking, hanging lights, asking the helpers.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub preparation: Vec<OwnStep>,
    /// Roughly what all that has to be bought costs, in words and a currency: "about 45 dollars, most of it locks".
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub cost: String,
    /// Which printing of the kit this is, and what changed since the last.
    #[serde(default, skip_serializing_if = "is_default")]
    pub revision: Revision,
    /// Real plays of the kit; they stand in a file of their own, `plays.ron`.
    #[serde(skip)]
    pub plays: Plays,
}

/// Whether a kit says nothing of its own here.
fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

macro_rules! finders {
    ($($name:ident, $name_mut:ident: $field:ident, $id:ty => $item:ty;)*) => {$(
        #[doc = concat!("The entry of `", stringify!($field), "` with this id.")]
        #[must_use]
        pub fn $name(&self, id: &$id) -> Option<&$item> {
            self.$field.iter().find(|item| item.id == *id)
        }

        #[doc = concat!("The entry of `", stringify!($field), "` with this id, to change.")]
        pub fn $name_mut(&mut self, id: &$id) -> Option<&mut $item> {
            self.$field.iter_mut().find(|item| item.id == *id)
        }
    )*};
}

impl Kit {
    finders! {
        note, note_mut: notes, NoteId => Note;
        spot, spot_mut: spots, SpotId => Spot;
        box_def, box_def_mut: boxes, BoxId => BoxDef;
        lock, lock_mut: locks, LockId => Lock;
        prop, prop_mut: props, PropId => Prop;
        puzzle, puzzle_mut: puzzles, PuzzleId => Puzzle;
    }

    /// The puzzle whose answer opens this lock; the first one, should there be two.
    #[must_use]
    pub fn puzzle_of(&self, lock: &LockId) -> Option<&Puzzle> {
        self.puzzles.iter().find(|puzzle| puzzle.opens == *lock)
    }

    /// The box on which this lock hangs.
    #[must_use]
    pub fn box_of(&self, lock: &LockId) -> Option<&BoxDef> {
        self.boxes.iter().find(|item| item.locks.contains(lock))
    }

    /// Minutes of play that the kit states for this level.
    #[must_use]
    pub fn minutes_at(&self, level: crate::diag::Level) -> u16 {
        self.levels.of(level).minutes.unwrap_or(self.minutes)
    }

    /// The printed prop that a box is: an envelope that lies where the box stands. Of two boxes that name one prop, it is
    /// the first.
    #[must_use]
    pub fn printed_as(&self, item: &BoxDef) -> Option<&Prop> {
        let prop = self.prop(item.printed.as_ref()?)?;
        (self.as_box(prop)?.id == item.id).then_some(prop)
    }

    /// Whether a box lies in another, so that boxes are filled from the innermost outwards.
    #[must_use]
    pub fn nests(&self) -> bool {
        self.boxes.iter().any(|item| matches!(item.place, Place::Box(_)))
    }

    /// The box that a printed prop is.
    #[must_use]
    pub fn as_box(&self, prop: &Prop) -> Option<&BoxDef> {
        let envelope = prop.printed.as_ref().is_some_and(|spec| spec.form == Form::Envelope);
        let first = self.boxes.iter().find(|item| item.printed.as_ref() == Some(&prop.id))?;
        (envelope && first.place == prop.place).then_some(first)
    }

    /// What the host is told a prop is called: by the name of the box that it is.
    #[must_use]
    pub fn prop_name<'a>(&'a self, prop: &'a Prop) -> &'a str {
        self.as_box(prop).map_or(&prop.name, |item| &item.name)
    }

    /// The person who waits for the word of this lock: the box that it opens stands with them. Where it stands with nobody,
    /// the host waits for the word.
    #[must_use]
    pub fn waits_for(&self, lock: &LockId) -> Option<&Spot> {
        match &self.box_of(lock)?.place {
            Place::Spot(spot) => self.spot(spot).filter(|spot| spot.person),
            Place::Box(_) => None,
        }
    }

    /// The locks that are words, parted in those for which a person of the kit waits, and those for which the host does.
    #[must_use]
    pub fn words(&self) -> (Vec<&Lock>, Vec<&Lock>) {
        let words = self.locks.iter().filter(|lock| lock.kind == LockKind::Spoken && self.box_of(&lock.id).is_some());
        words.partition(|lock| self.waits_for(&lock.id).is_some())
    }

    /// Whether a box is handed over or opened when a word is said, and guests have nothing to open at it.
    #[must_use]
    pub fn opens_at_a_word(&self, item: &BoxDef) -> bool {
        let word = |id| self.lock(id).is_some_and(|lock: &Lock| lock.kind == LockKind::Spoken);
        !item.locks.is_empty() && item.locks.iter().all(word)
    }

    /// The locks for which a tag is printed: those that hang on a box.
    pub fn tagged(&self) -> impl Iterator<Item = &Lock> {
        self.locks.iter().filter(|lock| lock.tagged() && self.box_of(&lock.id).is_some())
    }
}
