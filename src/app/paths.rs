//! Between frames: kits that are made, opened, saved and left, and the folders asked for.

use std::path::{Path, PathBuf};

use eframe::egui::{self, ViewportCommand};

use crate::app::App;
use crate::app::bars::Bar;
use crate::app::ctx::{Command, Leaving, PathFor};
use crate::app::dialogs::Asked;
use crate::app::doc::Doc;
use crate::app::history::History;
use crate::app::places::Locals;
use crate::bundle::{DEMO_KITS, begin};
use crate::diag::{Anchor, Hinted};

/// A path as it was typed; one that begins with `~/` lies in the author's home folder, as in a terminal.
pub(super) fn from_home(text: &str) -> PathBuf {
    match (text.strip_prefix("~/"), std::env::var_os("HOME")) {
        (Some(rest), Some(home)) => PathBuf::from(home).join(rest),
        _ => PathBuf::from(text),
    }
}

impl App {
    /// Asks for a folder: by the desktop's window where there is one, else by the path field.
    pub(super) fn ask(&mut self, ctx: &egui::Context, what: &PathFor) {
        if self.dialogs.available() {
            self.asked = Some(Asked::new(what.clone(), self.dialogs.ask(what, ctx)));
        } else {
            self.bar = Bar::Path(what.clone(), String::new());
        }
    }

    pub(super) fn path(&mut self, what: &PathFor, folder: &Path) {
        self.bar = Bar::None;
        match what {
            PathFor::New => self.begin(folder),
            PathFor::Open => {
                let opened = Doc::open(folder);
                self.opened(opened);
            }
            PathFor::SaveAs => {
                let saved = self.doc.save_as(folder);
                self.saved(saved);
            }
            PathFor::Export => self.locals.export.out = folder.display().to_string(),
            PathFor::Picture(_) => self.replace_picture(folder),
        }
    }

    /// Makes a fresh kit in a folder and goes to its title.
    fn begin(&mut self, folder: &Path) {
        let opened = begin(folder, None, None).and_then(|_| Doc::open(folder));
        let made = opened.is_ok();
        self.opened(opened);
        if made {
            self.session.go(Anchor::Kit, None);
            self.bar = Bar::Done(format!(
                "A fresh kit in {}: one box, one lock and one puzzle, sound as it stands. Give it a title, write its letter, \
                 and add puzzles under Build.",
                folder.display()
            ));
        }
    }

    fn opened(&mut self, opened: Hinted<Doc>) {
        match opened {
            Ok(mut doc) => {
                // Revisions go on counting, so that late results of the kit before are not taken for this one's.
                doc.revision = self.doc.revision + 1;
                self.doc = doc;
                self.session.start_over();
                self.history = History::default();
                self.locals = Locals::default();
                self.derived.forget();
                self.desk.forget();
                self.drawn = None;
                self.bar = Bar::Done(format!("Opened {}.", self.doc.place()));
            }
            Err(trouble) => self.bar = Bar::Trouble(trouble),
        }
    }

    pub(super) fn save(&mut self, ctx: &egui::Context) {
        if self.doc.has_place() {
            let saved = self.doc.save();
            self.saved(saved);
        } else {
            self.ask(ctx, &PathFor::SaveAs);
        }
    }

    fn saved(&mut self, saved: Hinted<()>) {
        self.history.seal();
        match saved {
            Ok(()) => {
                self.bar = Bar::Done(format!("Saved to {}.", self.doc.place()));
                if let Some(leaving) = self.leaving.take() {
                    self.pending.push(Command::Discard(leaving));
                }
            }
            Err(trouble) => {
                self.leaving = None;
                self.bar = Bar::Trouble(trouble.hint("nothing is lost: the kit is still open, and unsaved"));
            }
        }
    }

    /// Does what was put off because of unsaved changes.
    pub(super) fn leave(&mut self, ctx: &egui::Context, leaving: Leaving) {
        self.leaving = None;
        match leaving {
            Leaving::Quit => {
                self.may_close = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
            Leaving::New => self.ask(ctx, &PathFor::New),
            Leaving::Open => self.ask(ctx, &PathFor::Open),
            Leaving::Demo(at) => self.demo(at),
        }
    }

    pub(super) fn demo(&mut self, at: usize) {
        if let Some(name) = DEMO_KITS.get(at) {
            self.opened(Doc::demo(name));
        }
    }
}
