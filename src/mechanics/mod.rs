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
mod facts;
pub mod field;
mod fixed;
mod fold_strip;
mod fork_maze;
pub mod form;
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
mod pattern;
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
pub mod slips;
pub mod solved;
mod spelled;
pub mod stock;
mod tag_meta;
mod truth_tellers;
mod untyped;
mod word_reference;
pub mod words;
pub mod work;

use rand_chacha::ChaCha8Rng;

pub use dressing::{Dressing, NO_NAMES};
pub use facts::{Hung, Job, Meta, Part};
pub use pattern::Mechanic;
pub use untyped::{AnyMechanic, AnyView, Untyped};

use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Printed, TOLD};

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
