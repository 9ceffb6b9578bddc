//! Mechanics and their views without their types, so that one slice holds the family.

use std::fmt;

use serde::Deserialize as _;

use crate::diag::{Hinted, Trouble};
use crate::face::proof::Printed;
use crate::face::{Face, Piece};
use crate::kit::file::{from_ron, to_ron};
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::form::{self, FormField};
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::work::Work;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Rng};
use crate::readings::{Budget, Readings};

/// A mechanic without its types, as the family slice holds it.
pub trait AnyMechanic: Sync {
    /// What it is.
    fn meta(&self) -> &'static Meta;
    /// See [`Mechanic::on_locks`].
    fn on_locks(&self) -> &'static [&'static str];
    /// The default setup in RON.
    ///
    /// # Errors
    /// When the setup cannot be written as RON, which no mechanic brings about.
    fn default_setup(&self) -> Hinted<String>;
    /// The fields of its setup, for a form.
    ///
    /// # Errors
    /// When the setup holds what no form can show, which no mechanic's does.
    fn form(&self) -> Hinted<Vec<FormField>>;
    /// A setup as data, field by field as [`Self::form`] has them.
    ///
    /// # Errors
    /// When the setup cannot be read.
    fn setup_data(&self, setup: &str) -> Hinted<serde_json::Value>;
    /// A setup's text with other data; what is the same stays as it was written.
    ///
    /// # Errors
    /// When the setup cannot be read, or the data is no setup.
    fn setup_text(&self, setup: &str, data: &serde_json::Value) -> Hinted<String>;
    /// See [`Mechanic::symbols`]; none for a setup that cannot be read.
    fn symbols(&self, setup: &str, lock: &LockKind) -> Option<Vec<char>>;
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
    /// See [`Mechanic::kinds`].
    fn kinds(&self) -> Vec<(&'static str, String)>;
    /// See [`Mechanic::loose`].
    fn loose(&self) -> Vec<String>;
    /// See [`Mechanic::slips`].
    fn slips(&self, lock: &LockKind) -> Vec<Slip>;
    /// See [`Mechanic::solved`].
    fn solved(&self) -> Option<Solved>;
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
        let read = |piece: Piece| Piece {
            front: piece.front.in_reading_order(),
            back: piece.back.map(Face::in_reading_order),
            ..piece
        };
        Ok(self.mechanic.pieces(&self.view, cx)?.into_iter().map(read).collect())
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
    fn kinds(&self) -> Vec<(&'static str, String)> {
        self.mechanic.kinds(&self.view)
    }
    fn loose(&self) -> Vec<String> {
        self.mechanic.loose(&self.view)
    }
    fn slips(&self, lock: &LockKind) -> Vec<Slip> {
        self.mechanic.slips(&self.view, lock)
    }
    fn solved(&self) -> Option<Solved> {
        self.mechanic.solved(&self.view)
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

/// Gives a [`Mechanic`] its untyped face. Put `&Untyped(&LetterKey)` into [`MECHANICS`](crate::mechanics::MECHANICS).
pub struct Untyped<M: Mechanic>(pub &'static M);

impl<M: Mechanic> AnyMechanic for Untyped<M> {
    fn meta(&self) -> &'static Meta {
        &M::META
    }

    fn on_locks(&self) -> &'static [&'static str] {
        self.0.on_locks()
    }

    fn default_setup(&self) -> Hinted<String> {
        to_ron(&M::Setup::default())
    }

    fn form(&self) -> Hinted<Vec<FormField>> {
        form::fields::<M::Setup>(M::META.help)
    }

    fn setup_data(&self, setup: &str) -> Hinted<serde_json::Value> {
        let setup: M::Setup = from_ron(setup, "setup")?;
        serde_json::to_value(setup).map_err(|error| Trouble::new(format!("the setup cannot be written: {error}")))
    }

    fn setup_text(&self, setup: &str, data: &serde_json::Value) -> Hinted<String> {
        let old: M::Setup = from_ron(setup, "setup")?;
        let new = M::Setup::deserialize(data).map_err(|error| Trouble::new(error.to_string()))?;
        form::written(setup, &old, &new)
    }

    fn symbols(&self, setup: &str, lock: &LockKind) -> Option<Vec<char>> {
        self.0.symbols(&from_ron(setup, "setup").ok()?, lock)
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
