//! Between frames: the kit's change of theme, a theme being made, words made slots, what other programs change.

use std::path::Path;

use eframe::egui;

use crate::app::App;
use crate::app::bars::{Bar, Picked};
use crate::app::change::Change;
use crate::app::ctx::Command;
use crate::app::doc::Reread;
use crate::app::history::History;
use crate::app::session::Selection;
use crate::bundle::find_theme;
use crate::diag::{Anchor, Trouble};
use crate::files::Watch;
use crate::ids::ThemeId;
use crate::kit::WordForms;
use crate::kit::edit::{Edit, Facts, between};
use crate::redress::{leftovers, make_slot, rename_symbol, watch_begun};
use crate::script::{Words, same_word};
use crate::theme::{PictureKind, ThemeEdit};

impl App {
    /// Takes in a change of theme that has come to its end.
    pub(super) fn take_redress(&mut self) {
        let Some((revision, done)) =
            self.redressing.as_ref().and_then(|running| Some((running.revision, running.poll()?)))
        else {
            return;
        };
        self.redressing = None;
        self.session.redressing = false;
        match done {
            Ok(_) if revision != self.doc.revision => {
                self.bar = Bar::Trouble(
                    Trouble::new("the kit was changed meanwhile, so it keeps its theme")
                        .hint("put it into the theme again"),
                );
            }
            Ok(done) => {
                self.pending.push(Command::Step(done.edits));
                self.pending.push(Command::Target(None));
                if done.left > 0 {
                    self.pending.push(Command::Select(Selection::Leftovers));
                }
                self.bar = Bar::Done(done.words);
            }
            Err(trouble) => self.bar = Bar::Trouble(trouble),
        }
    }

    /// Watches the folders of kit and theme, and reads anew what another program has changed in them.
    pub(super) fn watch_disk(&mut self, ctx: &egui::Context) {
        let folders = self.doc.watched();
        let mut changed = self.watch.1.as_ref().is_some_and(Watch::changed);
        // A folder that comes into being later is watched from then on.
        if changed || self.watch.0 != folders {
            let ctx = ctx.clone();
            // A system that watches no more folders takes nothing away: what others change shows when the kit is opened.
            let watch = Watch::new(&folders, move || ctx.request_repaint()).ok();
            changed &= self.watch.0 == folders;
            self.watch = (folders, watch);
        }
        if !changed {
            return;
        }
        match self.doc.reread_kit() {
            Reread::Same => {}
            Reread::Fresh => {
                self.history = History::default();
                self.bar = Bar::Done("Another program has changed the kit's file; it was read anew.".into());
            }
            Reread::Behind(trouble) => self.bar = Bar::Trouble(trouble),
        }
        if self.doc.reread_theme() {
            ctx.request_repaint();
        }
    }

    /// Changes the theme worn, as part of the gesture under way.
    pub(super) fn edit_theme(&mut self, ctx: &egui::Context, edit: ThemeEdit) {
        let field = ctx.memory(egui::Memory::focused).map(|id| id.value());
        let now = ctx.input(|input| input.time);
        let change = Change::Theme(self.doc.worn().clone(), edit);
        if self.history.edit(&mut self.doc, change, field, now) {
            self.changed(ctx);
        }
    }

    /// Changes the theme worn in one step.
    pub(super) fn step_theme(&mut self, ctx: &egui::Context, edits: Vec<ThemeEdit>) {
        let id = self.doc.worn().clone();
        let changes = edits.into_iter().map(|edit| Change::Theme(id.clone(), edit)).collect();
        if self.history.step(&mut self.doc, changes) {
            self.changed(ctx);
        }
    }

    /// Puts a picture from disk in the place of one of the theme's.
    pub(super) fn replace_picture(&mut self, file: &Path) {
        let Some((kind, name)) = self.replacing.take() else { return };
        self.bar = match self.doc.take_picture(kind, &name, file) {
            Ok((edit, left_out)) => {
                self.pending.push(Command::ThemeStep(vec![edit]));
                let mut words = format!("{} is the {} {name} now.", file.display(), kind.word());
                for less in left_out {
                    words.push_str(&format!(" Left out: {}.", less.message));
                }
                Bar::Done(words)
            }
            Err(trouble) => Bar::Trouble(trouble.hint("the picture before stands")),
        };
    }

    /// Gives a symbol of the theme another name, and the kit with it, in one step.
    pub(super) fn rename_symbol(&mut self, ctx: &egui::Context, old: &str, new: &str) {
        let theme = &self.doc.theme.theme;
        let Some(path) = theme.symbols.get(old).cloned() else { return };
        let kit = rename_symbol(&self.doc.kit, theme, old, new);
        let id = self.doc.worn().clone();
        let entry = |name: &str, path| ThemeEdit::Picture(PictureKind::Symbol, name.to_owned(), path);
        let mut changes: Vec<Change> = between(&self.doc.kit, &kit).into_iter().map(Change::Kit).collect();
        changes.push(Change::Theme(id.clone(), entry(new, Some(path))));
        changes.push(Change::Theme(id, entry(old, None)));
        if self.history.step(&mut self.doc, changes) {
            self.changed(ctx);
        }
    }

    /// Looks for what the kit still says of the theme that the one worn was begun from.
    pub(super) fn watch_begun(&mut self, begun: &ThemeId) {
        match find_theme(self.doc.opened().files.as_ref(), begun) {
            Ok((before, _)) => {
                let kit = watch_begun(&self.doc.kit, &before.theme, &self.doc.theme.theme);
                let left = leftovers(&kit).len();
                self.pending.push(Command::Step(between(&self.doc.kit, &kit)));
                let name = &before.theme.name;
                self.bar = Bar::Done(match left {
                    0 => format!("The kit says nothing of {name} that your theme says otherwise."),
                    1 => format!("One place still speaks of {name}."),
                    left => format!("{left} places still speak of {name}."),
                });
            }
            Err(trouble) => self.bar = Bar::Trouble(trouble),
        }
    }

    /// Copies the theme worn from the author's folder into the kit.
    pub(super) fn bring_theme(&mut self, ctx: &egui::Context) {
        self.bar = match self.doc.bring_theme() {
            Ok(()) => Bar::Done(format!("The kit has a copy of its own now: themes/{}/.", self.doc.worn())),
            Err(trouble) => Bar::Trouble(trouble),
        };
        ctx.request_repaint();
    }

    /// Begins a theme of the kit's own and puts it on: it is a copy, so nothing else changes.
    pub(super) fn start_theme(&mut self, ctx: &egui::Context, name: &str) {
        match self.doc.start_theme(name) {
            Ok(id) => {
                let facts = Facts { theme: id.clone(), ..Facts::of(&self.doc.kit) };
                self.pending.push(Command::Step(vec![Edit::Facts(Box::new(facts))]));
                self.bar = Bar::Done(format!(
                    "The kit wears a theme of its own now: themes/{id}/. When its words are yours, Leftovers finds what the \
                     kit still says of the old ones."
                ));
                ctx.request_repaint();
            }
            Err(trouble) => self.bar = Bar::Trouble(trouble),
        }
    }

    /// The word of the theme or the kit that says the same, if there is one.
    fn known_word(&self, word: &str) -> Option<(String, WordForms)> {
        let words = Words::new(&self.doc.theme.theme, &self.doc.kit);
        let known = words.forms().iter().find(|(_, forms)| same_word(&forms.one, word));
        known.map(|(name, forms)| (name.clone(), forms.clone()))
    }

    pub(super) fn pick_slot(&mut self, anchor: Anchor, word: String) {
        let known = self.known_word(&word);
        let slot = known.as_ref().map_or_else(|| crate::ids::slug(&word).replace('-', "_"), |(name, _)| name.clone());
        let forms = known.as_ref().map(|(_, forms)| forms);
        let (_, here) = make_slot(&self.doc.kit, &word, &slot, forms, Some(&anchor));
        let (_, all) = make_slot(&self.doc.kit, &word, &slot, forms, None);
        self.bar = Bar::Slot(Picked { anchor, word, slot, places: (here, all) });
    }

    pub(super) fn make_slot(&mut self, ctx: &egui::Context, only: Option<&Anchor>, word: &str, slot: &str) {
        let named = !slot.is_empty() && slot.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
        if !named || slot.starts_with(|c: char| c.is_ascii_digit()) {
            let trouble = Trouble::new(format!("\"{slot}\" is no name for a slot"));
            self.bar = Bar::Trouble(trouble.hint("use lower-case letters, digits and _, such as night_lamp"));
            return;
        }
        let words = Words::new(&self.doc.theme.theme, &self.doc.kit);
        let known = words.forms().get(slot).cloned();
        if let Some(forms) = known.as_ref().filter(|forms| !same_word(&forms.one, word)) {
            let trouble = Trouble::new(format!("the slot {slot} says \"{}\" already", forms.one));
            self.bar = Bar::Trouble(trouble.hint("give the slot another name"));
            return;
        }
        let (edits, places) = make_slot(&self.doc.kit, word, slot, known.as_ref(), only);
        self.pending.push(Command::Step(edits));
        let places = if places == 1 { "1 place".to_owned() } else { format!("{places} places") };
        self.bar =
            Bar::Done(format!("“{word}” is the slot {slot} now, at {places}. What it says stands under Dress, Words."));
        ctx.request_repaint();
    }
}
