//! Mechanics: reusable puzzle patterns. One file each, one line each in [`MECHANICS`].
//!
//! A mechanic arranges a puzzle for an answer ([`Mechanic::lay_out`]), and an independent solver reads it back
//! from the view alone ([`Mechanic::readings`]).

mod balance_cards;
mod banded_counters;
mod braille_card;
mod clock_faces;
pub mod codes;
mod count_scene;
mod cut_strips;
mod domino_chain;
mod dot_to_dot;
pub mod dots;
mod dressing;
pub mod field;
mod fixed;
mod fold_strip;
mod fork_maze;
mod glow_ink;
mod grid_square;
mod hidden_numbers;
mod keypad_word;
mod lasting_ink;
mod leftover_letters;
mod letter_key;
mod lid;
mod line_initials;
mod logic_grid;
mod magnet_field;
mod marked_hiding_place;
mod marked_letters;
mod mask_card;
mod morse_strip;
mod number_place;
mod number_words;
mod odd_letters;
mod overlay_sheets;
pub mod paper;
mod picture_grid;
mod picture_key;
pub mod pictures;
mod price_list;
mod route_map;
pub mod sample;
mod semaphore_figures;
mod shift_wheel;
mod signs;
pub mod sketch;
mod spelled;
mod tag_meta;
mod truth_tellers;
mod word_reference;
pub mod words;
pub mod work;

use std::fmt;

use rand_chacha::ChaCha8Rng;
use serde::de::DeserializeOwned;
use serde::{Deserialize as _, Serialize};

pub use dressing::Dressing;

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::{Printed, TOLD};
use crate::kit::file::{from_ron, to_ron};
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::work::Work;
use crate::readings::{Budget, Readings};

/// The only source of chance: seeded, the same on every machine.
pub type Rng = ChaCha8Rng;

/// Every mechanic, in the order in which they are listed.
pub const MECHANICS: &[&dyn AnyMechanic] = &[
    &Untyped(&letter_key::LetterKey),
    &Untyped(&glow_ink::GlowInk),
    &Untyped(&banded_counters::BandedCounters),
    &Untyped(&lasting_ink::LastingInk),
    &Untyped(&marked_letters::MarkedLetters),
    &Untyped(&magnet_field::MagnetField),
    &Untyped(&marked_hiding_place::MarkedHidingPlace),
    &Untyped(&number_place::NumberPlace),
    &Untyped(&picture_grid::PictureGrid),
    &Untyped(&logic_grid::LogicGrid),
    &Untyped(&truth_tellers::TruthTellers),
    &Untyped(&leftover_letters::LeftoverLetters),
    &Untyped(&balance_cards::BalanceCards),
    &Untyped(&price_list::PriceList),
    &Untyped(&domino_chain::DominoChain),
    &Untyped(&morse_strip::MorseStrip),
    &Untyped(&keypad_word::KeypadWord),
    &Untyped(&grid_square::GridSquare),
    &Untyped(&picture_key::PictureKey),
    &Untyped(&clock_faces::ClockFaces),
    &Untyped(&shift_wheel::ShiftWheel),
    &Untyped(&braille_card::BrailleCard),
    &Untyped(&semaphore_figures::SemaphoreFigures),
    &Untyped(&hidden_numbers::HiddenNumbers),
    &Untyped(&odd_letters::OddLetters),
    &Untyped(&cut_strips::CutStrips),
    &Untyped(&fold_strip::FoldStrip),
    &Untyped(&overlay_sheets::OverlaySheets),
    &Untyped(&fork_maze::ForkMaze),
    &Untyped(&dot_to_dot::DotToDot),
    &Untyped(&count_scene::CountScene),
    &Untyped(&route_map::RouteMap),
    &Untyped(&line_initials::LineInitials),
    &Untyped(&word_reference::WordReference),
    &Untyped(&mask_card::MaskCard),
    &Untyped(&tag_meta::TagMeta),
];

/// What a mechanic is, in words and facts.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Meta {
    /// Stable id; also the file name with `_` for `-`.
    pub id: &'static str,
    /// Name as shown.
    pub name: &'static str,
    /// What guests do, in a sentence.
    pub guests: &'static str,
    /// What fixes the order of the answer.
    pub order: &'static str,
    /// What is printed.
    pub prints: &'static str,
    /// What the host prepares.
    pub host: &'static str,
    /// The help text: what can be chosen in the setup, with an example in RON, and the traps.
    pub help: &'static str,
    /// The parts that must lie somewhere in the room, printed or made.
    pub parts: &'static [Part],
    /// Typical minutes for a group, least and most (estimate; common practice, no source).
    pub minutes: (u8, u8),
    /// Youngest age that can do it (estimate; common practice, no source).
    pub least_age: u8,
    /// Materials of the tools that guests need: "uv-torch".
    pub tools: &'static [&'static str],
    /// Whether guests must tell colours apart; a twin in shape or word must then be drawn.
    pub colour: bool,
}

/// A part of a puzzle: printed or made by the host.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Part {
    /// Key under which the kit says where it lies.
    pub key: &'static str,
    /// What it is, in words.
    pub name: &'static str,
    /// Whether Inklatch prints it (else the host makes it).
    pub printed: bool,
    /// Whether it depends on the setup whether the part exists.
    pub optional: bool,
}

/// What a mechanic is asked to arrange.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    /// The answer as the author wrote it.
    pub answer: &'a str,
    /// The lock that it opens.
    pub lock: &'a LockKind,
    /// The theme's symbols, by name, for mechanics that draw with them.
    pub symbols: &'a [&'a str],
    /// The symbols that mark the kit's locks: one among the things of a puzzle would be taken for the mark.
    pub marks: &'a [&'a str],
    /// The theme's telling colours: name and value.
    pub colours: &'a [(&'a str, crate::theme::Colour)],
    /// The locks of the kit that hang in a hole of a hasp, without the one that the answer opens, by their holes.
    pub hung: &'a [Hung<'a>],
}

/// A lock in a hole of a hasp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hung<'a> {
    /// What the host calls it.
    pub name: &'a str,
    /// The symbol that marks it; may be empty.
    pub mark: &'a str,
    /// The hole, counted from the hinge.
    pub hole: u8,
    /// Whether a box stays shut as long as it does.
    pub needed: bool,
}

/// A reusable puzzle pattern.
pub trait Mechanic: Sync + Send + 'static {
    /// What the author chooses.
    type Setup: Serialize + DeserializeOwned + Default;
    /// All that guests can see, and nothing else. It never holds the answer.
    type View: Serialize + DeserializeOwned + Send + Sync + fmt::Debug + 'static;
    /// What it is.
    const META: Meta;

    /// Arranges the puzzle for the job's answer. `rng` is the only source of chance.
    ///
    /// # Errors
    /// When no arrangement can carry the answer; the hints say what to change.
    fn lay_out(&self, setup: &Self::Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<Self::View>;

    /// Every answer that the view allows and the lock can show. It sees nothing else.
    fn readings(&self, view: &Self::View, lock: &LockKind, budget: &mut Budget) -> Readings;

    /// The view, read back from what is printed and from nothing else: the places, sizes and colours of text and
    /// outlines in `printed`, the fronts and backs of all pieces that [`Mechanic::pieces`] makes (those for the host
    /// as well), without what nobody sees; last, what the host is told to make by hand ([`told`]). `cx` says how the theme draws and words things, never what the puzzle is.
    /// None: nothing is printed that carries the puzzle, which the host makes by hand.
    ///
    /// What [`Mechanic::readings`] does not look at may be left at its default. Where the paper shows something that
    /// the view cannot say, that is an error, so that no fault of the drawing stays unseen.
    ///
    /// # Errors
    /// When the paper cannot be read as this puzzle; the message says what was looked for and what was found.
    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<Self::View>> {
        let _ = (printed, cx);
        None
    }

    /// The parts that this view has, of those in [`Meta::parts`].
    fn parts(&self, view: &Self::View) -> Vec<&'static str>;

    /// Pairs of parts that must not lie at one place; none unless the mechanic says so.
    fn apart(&self, view: &Self::View) -> Vec<(&'static str, &'static str)> {
        let _ = view;
        Vec::new()
    }

    /// What is printed.
    ///
    /// # Errors
    /// When the theme lacks a frame or slot that the piece needs.
    fn pieces(&self, view: &Self::View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>>;

    /// What the host does beforehand: one step after another, with materials, minutes, waiting.
    fn prep(&self, view: &Self::View, cx: &Dressing<'_>) -> Vec<PrepStep>;

    /// How a guest gets from the pieces to the answer, in sentences for the host's answer page; the answer
    /// itself is added by the guide.
    fn reason(&self, view: &Self::View, cx: &Dressing<'_>) -> String;

    /// The work that this view is for guests, counted; none where there is nothing to count.
    fn work(&self, view: &Self::View) -> Option<Work> {
        let _ = view;
        None
    }

    /// What stands on pieces that can lie upside down unnoticed: loose, and with no line beneath.
    fn loose(&self, view: &Self::View) -> Vec<String> {
        let _ = view;
        Vec::new()
    }

    /// How to put it back for the next group, in a sentence.
    fn reset(&self, view: &Self::View, cx: &Dressing<'_>) -> String;

    /// Three usable hints in the theme's words. None holds the answer.
    fn draft_hints(&self, view: &Self::View, cx: &Dressing<'_>) -> HintLadder;
}

/// A mechanic without its types, as the family slice holds it.
pub trait AnyMechanic: Sync {
    /// What it is.
    fn meta(&self) -> &'static Meta;
    /// The default setup in RON.
    ///
    /// # Errors
    /// When the setup cannot be written as RON, which no mechanic brings about.
    fn default_setup(&self) -> Hinted<String>;
    /// Reads the setup and arranges the puzzle.
    ///
    /// # Errors
    /// When the setup cannot be read, or as [`Mechanic::lay_out`].
    fn lay_out(&self, setup: &str, job: &Job<'_>, rng: &mut Rng) -> Hinted<Box<dyn AnyView>>;
    /// Reads a view back from its JSON ([`AnyView::json`]), as tests and proofs do.
    ///
    /// # Errors
    /// When the JSON is not a view of this mechanic.
    fn view(&self, json: &serde_json::Value) -> Hinted<Box<dyn AnyView>>;
    /// See [`Mechanic::reread`].
    ///
    /// # Errors
    /// As there.
    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<Box<dyn AnyView>>>;
}

/// A puzzle laid out, without its types. The methods are those of [`Mechanic`].
pub trait AnyView: fmt::Debug + Send + Sync {
    /// See [`Mechanic::readings`].
    fn readings(&self, lock: &LockKind, budget: &mut Budget) -> Readings;
    /// See [`Mechanic::parts`].
    fn parts(&self) -> Vec<&'static str>;
    /// See [`Mechanic::apart`].
    fn apart(&self) -> Vec<(&'static str, &'static str)>;
    /// See [`Mechanic::pieces`].
    ///
    /// # Errors
    /// As there.
    fn pieces(&self, cx: &Dressing<'_>) -> Hinted<Vec<Piece>>;
    /// See [`Mechanic::prep`].
    fn prep(&self, cx: &Dressing<'_>) -> Vec<PrepStep>;
    /// See [`Mechanic::reason`].
    fn reason(&self, cx: &Dressing<'_>) -> String;
    /// See [`Mechanic::work`].
    fn work(&self) -> Option<Work>;
    /// See [`Mechanic::loose`].
    fn loose(&self) -> Vec<String>;
    /// See [`Mechanic::reset`].
    fn reset(&self, cx: &Dressing<'_>) -> String;
    /// See [`Mechanic::draft_hints`].
    fn draft_hints(&self, cx: &Dressing<'_>) -> HintLadder;
    /// The view as data.
    fn json(&self) -> serde_json::Value;
}

/// A view together with the mechanic that made it.
struct Typed<M: Mechanic> {
    mechanic: &'static M,
    view: M::View,
}

impl<M: Mechanic> fmt::Debug for Typed<M> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.view.fmt(f)
    }
}

impl<M: Mechanic> AnyView for Typed<M> {
    fn readings(&self, lock: &LockKind, budget: &mut Budget) -> Readings {
        self.mechanic.readings(&self.view, lock, budget)
    }
    fn parts(&self) -> Vec<&'static str> {
        self.mechanic.parts(&self.view)
    }
    fn apart(&self) -> Vec<(&'static str, &'static str)> {
        self.mechanic.apart(&self.view)
    }
    fn pieces(&self, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        self.mechanic.pieces(&self.view, cx)
    }
    fn prep(&self, cx: &Dressing<'_>) -> Vec<PrepStep> {
        self.mechanic.prep(&self.view, cx)
    }
    fn reason(&self, cx: &Dressing<'_>) -> String {
        self.mechanic.reason(&self.view, cx)
    }
    fn work(&self) -> Option<Work> {
        self.mechanic.work(&self.view)
    }
    fn loose(&self) -> Vec<String> {
        self.mechanic.loose(&self.view)
    }
    fn reset(&self, cx: &Dressing<'_>) -> String {
        self.mechanic.reset(&self.view, cx)
    }
    fn draft_hints(&self, cx: &Dressing<'_>) -> HintLadder {
        self.mechanic.draft_hints(&self.view, cx)
    }
    fn json(&self) -> serde_json::Value {
        serde_json::to_value(&self.view).unwrap_or_default()
    }
}

/// Gives a [`Mechanic`] its untyped face. Put `&Untyped(&LetterKey)` into [`MECHANICS`].
pub struct Untyped<M: Mechanic>(pub &'static M);

impl<M: Mechanic> AnyMechanic for Untyped<M> {
    fn meta(&self) -> &'static Meta {
        &M::META
    }

    fn default_setup(&self) -> Hinted<String> {
        to_ron(&M::Setup::default())
    }

    fn lay_out(&self, setup: &str, job: &Job<'_>, rng: &mut Rng) -> Hinted<Box<dyn AnyView>> {
        let setup: M::Setup = from_ron(setup, "setup")?;
        let view = self.0.lay_out(&setup, job, rng)?;
        Ok(Box::new(Typed { mechanic: self.0, view }))
    }

    fn view(&self, json: &serde_json::Value) -> Hinted<Box<dyn AnyView>> {
        let view = M::View::deserialize(json)
            .map_err(|error| Trouble::new(format!("this is no view of {}: {error}", M::META.id)))?;
        Ok(Box::new(Typed { mechanic: self.0, view }))
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<Box<dyn AnyView>>> {
        let view = self.0.reread(printed, cx)?;
        Some(view.map(|view| -> Box<dyn AnyView> { Box::new(Typed { mechanic: self.0, view }) }))
    }
}

/// The mechanic with this id.
///
/// # Errors
/// When there is none; the hint names the nearest.
pub fn find(id: &str) -> Hinted<&'static dyn AnyMechanic> {
    MECHANICS.iter().copied().find(|mechanic| mechanic.meta().id == id).ok_or_else(|| {
        let known: Vec<&str> = MECHANICS.iter().map(|mechanic| mechanic.meta().id).collect();
        let mut trouble = Trouble::new(format!("there is no mechanic `{id}`"));
        if let Some(near) = crate::kit::file::nearest(id, &known) {
            trouble = trouble.hint(format!("did you mean `{near}`?"));
        }
        trouble.hint("`inklatch mechanics` lists them")
    })
}

/// The front of the printed piece of a part; where a part has several pieces, the first.
///
/// # Errors
/// When none is printed.
pub fn front<'a>(printed: &'a [Printed], part: &str) -> Hinted<&'a Printed> {
    let wanted = |side: &&Printed| side.part == part && !side.back;
    printed.iter().find(wanted).ok_or_else(|| Trouble::new(format!("no piece is printed for the part `{part}`")))
}

/// What the host is told to do beforehand, for what is not printed: the sentences of [`Mechanic::prep`] in order.
#[must_use]
pub fn told(printed: &[Printed]) -> Vec<&str> {
    let page = printed.iter().filter(|side| side.part == TOLD);
    page.flat_map(|side| &side.texts).map(|text| text.text.as_str()).collect()
}
