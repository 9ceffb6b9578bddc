//! The trait of every mechanic.

use std::fmt;

use serde::Serialize;
use serde::de::DeserializeOwned;

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::Work;
use crate::mechanics::{Dressing, Job, Meta, Rng};
use crate::readings::{Budget, Readings};

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
    /// as well), without what nobody sees; last, what the host is told to make by hand ([`told`](crate::mechanics::told)). `cx` says how the theme draws and words things, never what the puzzle is.
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

    /// The symbols that a puzzle with this setup holds by itself, where codes of other symbols would change what it is
    /// made of: codes are proposed of these alone. None: of any that the lock can show.
    fn symbols(&self, setup: &Self::Setup, lock: &LockKind) -> Option<Vec<char>> {
        let _ = (setup, lock);
        None
    }

    /// The parts that this view has, of those in [`Meta::parts`].
    fn parts(&self, view: &Self::View) -> Vec<&'static str>;

    /// Parts that hang on the locks of the box into which the kit lays them, and are in hand once these are open; none
    /// unless the mechanic says so.
    fn on_locks(&self) -> &'static [&'static str] {
        &[]
    }

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

    /// Which kinds of a material its preparation takes, for the shopping list: the material's id, and the kinds in words, as
    /// "13 gold and 12 white".
    fn kinds(&self, view: &Self::View) -> Vec<(&'static str, String)> {
        let _ = view;
        Vec::new()
    }

    /// What stands on pieces that can lie upside down unnoticed: loose, and with no line beneath.
    fn loose(&self, view: &Self::View) -> Vec<String> {
        let _ = view;
        Vec::new()
    }

    /// Answers to which a slip of this pattern leads, the most usual first, each with what went wrong and what to say, for
    /// the host; may hold the answer itself, and what the lock cannot show ([`slips::told`](crate::mechanics::slips::told)
    /// leaves these out).
    fn slips(&self, view: &Self::View, lock: &LockKind) -> Vec<Slip> {
        let _ = (view, lock);
        Vec::new()
    }

    /// The solved state, drawn or in a table, where a host sees more in it than in [`Mechanic::reason`]; none where the
    /// view has no certain one.
    fn solved(&self, view: &Self::View) -> Option<Solved> {
        let _ = view;
        None
    }

    /// How to put it back for the next group, in a sentence.
    fn reset(&self, view: &Self::View, cx: &Dressing<'_>) -> String;

    /// Three usable hints in the theme's words. None holds the answer.
    fn draft_hints(&self, view: &Self::View, cx: &Dressing<'_>) -> HintLadder;
}
