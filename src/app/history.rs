use std::collections::VecDeque;

use crate::app::change::{Change, Target, apply_all};
use crate::app::session::Selection;
use crate::limits;

/// Seconds within which further typing in the same field joins the step before it.
const TYPING_SECS: f64 = 1.5;

/// A step that can be taken back.
#[derive(Debug)]
struct Step {
    /// What takes it back, in the order to apply.
    back: Vec<Change>,
    /// The field that was typed in, and when last: more of the same joins the step.
    typed: Option<(u64, f64)>,
}

/// Undo and redo, by gesture.
///
/// All edits between two moments at which no key and no button is down are one step, so a drag over a hundred
/// frames is taken back at once; so is typing in one field without a pause.
#[derive(Debug, Default)]
pub struct History {
    done: VecDeque<Step>,
    undone: Vec<Vec<Change>>,
    open: Option<Step>,
}

impl History {
    /// Applies an edit as part of the gesture under way; false when nothing changed. `field` is the field that
    /// has the keyboard, `now` the seconds since the window opened.
    pub fn edit(&mut self, to: &mut impl Target, change: Change, field: Option<u64>, now: f64) -> bool {
        let Some(back) = to.apply(change) else { return false };
        self.undone.clear();
        let step = self.open.get_or_insert_with(|| Step { back: Vec::new(), typed: None });
        if !step.back.first().is_some_and(|newest| newest.covers(&back)) {
            step.back.insert(0, back);
        }
        step.typed = field.map(|field| (field, now));
        true
    }

    /// Applies a list of edits as one step of its own; false when nothing changed.
    pub fn step(&mut self, to: &mut impl Target, changes: Vec<Change>) -> bool {
        self.close();
        let back = apply_all(to, changes);
        if back.is_empty() {
            return false;
        }
        self.undone.clear();
        self.push(Step { back, typed: None });
        true
    }

    /// Ends the gesture; called when no key and no button is down.
    pub fn close(&mut self) {
        let Some(step) = self.open.take() else { return };
        if let (Some(last), Some((field, now))) = (self.done.back_mut(), step.typed)
            && let Some((last_field, at)) = last.typed
            && last_field == field
            && now - at <= TYPING_SECS
        {
            let mut back = step.back;
            back.retain(|newer| !last.back.first().is_some_and(|older| older.covers(newer)));
            back.append(&mut last.back);
            *last = Step { back, typed: Some((field, now)) };
            return;
        }
        self.push(step);
    }

    /// Ends the step for good: what is typed next is a step of its own. Called when the kit is saved, so that
    /// undo can come back to just what was saved.
    pub fn seal(&mut self) {
        self.close();
        if let Some(last) = self.done.back_mut() {
            last.typed = None;
        }
    }

    fn push(&mut self, step: Step) {
        if self.done.len() >= limits::UNDO_STEPS {
            self.done.pop_front();
        }
        self.done.push_back(step);
    }

    /// Takes back the last step and answers where that shows; none when there is no step.
    pub fn undo(&mut self, to: &mut impl Target) -> Option<Vec<Selection>> {
        self.close();
        let step = self.done.pop_back()?;
        let places = step.back.iter().filter_map(Change::shows_at).collect();
        self.undone.push(apply_all(to, step.back));
        Some(places)
    }

    /// Makes the step last taken back again and answers where that shows; none when there is no step.
    pub fn redo(&mut self, to: &mut impl Target) -> Option<Vec<Selection>> {
        self.close();
        let changes = self.undone.pop()?;
        let places = changes.iter().filter_map(Change::shows_at).collect();
        let back = apply_all(to, changes);
        self.push(Step { back, typed: None });
        Some(places)
    }

    /// Whether there is a step to take back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.open.is_some() || !self.done.is_empty()
    }

    /// Whether there is a step to make again.
    #[must_use]
    pub const fn can_redo(&self) -> bool {
        !self.undone.is_empty()
    }

    /// How many steps can be taken back, not counting a gesture under way.
    #[must_use]
    pub fn len(&self) -> usize {
        self.done.len()
    }
}
