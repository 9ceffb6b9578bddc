//! Between frames: results come in, commands are carried out, work is sent off.

use std::path::Path;
use std::sync::Arc;

use eframe::egui::{self, ViewportCommand};

use crate::app::App;
use crate::app::action::Action;
use crate::app::bars::Bar;
use crate::app::change::Change;
use crate::app::ctx::{Command, Leaving, PathFor};
use crate::app::export::{Outcome, Running};
use crate::app::paths::from_home;
use crate::app::preview::{Job, Wanted};
use crate::app::redressing::Redressing;
use crate::app::session::Selection;
use crate::app::worker::{ProofJob, Report};
use crate::bundle::Options;
use crate::diag::Level;

/// What was asked to be drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drawn {
    revision: u64,
    level: Level,
    /// What is looked at.
    pub wanted: Wanted,
    width_px: u32,
}

impl App {
    /// What is done before the views: keys, results of the workers, answers of windows, the end of a gesture.
    pub(super) fn before(&mut self, ctx: &egui::Context) {
        for (action, keys) in Action::by_shortcut() {
            if ctx.input_mut(|input| input.consume_shortcut(&keys)) {
                self.hear(vec![Command::Do(action)]);
            }
        }
        if ctx.input(|input| input.viewport().close_requested()) && !self.may_close && self.doc.unsaved() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.bar = Bar::Unsaved(Leaving::Quit);
        }
        if ctx.input(|input| input.keys_down.is_empty() && !input.pointer.any_down()) {
            self.history.close();
        }
        self.watch_disk(ctx);
        self.take_reports(ctx);
        self.take_answers();
        self.drain(ctx);
    }

    fn take_reports(&mut self, ctx: &egui::Context) {
        let reports: Vec<Report> = self.worker.reports().collect();
        for report in reports {
            match report {
                Report::Shown(shown) => self.desk.take(shown),
                Report::Looked(findings) => self.derived.looked(findings),
                Report::Proved(revision, proof) => self.derived.proved(revision, *proof),
            }
        }
        self.take_codes(ctx);
        self.take_redress();
        let Some(running) = &self.running else { return };
        match running.poll() {
            None => self.derived.export = Some(running.progress()),
            Some(outcome) => {
                self.running = None;
                self.derived.export = None;
                self.bar = match outcome {
                    Outcome::Done(words) => Bar::Done(words),
                    Outcome::Stopped => Bar::Done("The export was stopped; nothing was left behind.".into()),
                    Outcome::Failed(trouble) => Bar::Trouble(trouble),
                };
            }
        }
    }

    fn take_answers(&mut self) {
        let Some((what, answer)) = self.asked.as_ref().and_then(|asked| Some((asked.what.clone(), asked.poll()?)))
        else {
            return;
        };
        self.asked = None;
        match answer {
            Some(folder) => self.path(&what, &folder),
            // The portal gave no answer, or the author waved it away; the field serves in both cases.
            None => self.bar = Bar::Path(what, String::new()),
        }
    }

    /// Carries out what the views and the keys asked for.
    pub(super) fn drain(&mut self, ctx: &egui::Context) {
        for command in std::mem::take(&mut self.pending) {
            self.carry_out(ctx, command);
        }
        if !self.pending.is_empty() {
            ctx.request_repaint();
        }
        let title = format!("{}{} — Inklatch", if self.doc.unsaved() { "• " } else { "" }, self.doc.kit.title);
        if self.title != title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    fn carry_out(&mut self, ctx: &egui::Context, command: Command) {
        match command {
            Command::Edit(edit) => {
                let field = ctx.memory(egui::Memory::focused).map(|id| id.value());
                let now = ctx.input(|input| input.time);
                if self.history.edit(&mut self.doc, Change::Kit(edit), field, now) {
                    self.changed(ctx);
                }
            }
            Command::Step(edits) => {
                if self.history.step(&mut self.doc, edits.into_iter().map(Change::Kit).collect()) {
                    self.changed(ctx);
                }
            }
            Command::Say(words) => self.bar = Bar::Done(words),
            Command::ThemeEdit(edit) => self.edit_theme(ctx, edit),
            Command::ThemeStep(edits) => self.step_theme(ctx, edits),
            Command::Replace(kind, name) => {
                let what = PathFor::Picture(format!("{} {name}", kind.word()));
                self.replacing = Some((kind, name));
                self.ask(ctx, &what);
            }
            Command::RenameSymbol(old, new) => self.rename_symbol(ctx, &old, &new),
            Command::WatchBegun(id) => self.watch_begun(&id),
            Command::TakeThemeFile => {
                self.doc.take_theme_file();
                ctx.request_repaint();
            }
            Command::Do(action) => self.act(ctx, action),
            Command::Select(selection) => self.session.select(selection),
            Command::Go(anchor, level) => {
                self.session.go(anchor, level);
                ctx.request_repaint();
            }
            Command::Level(level) => self.session.level = level,
            Command::Paper(paper) => self.session.paper = paper,
            Command::Edition(edition) => self.session.edition = edition,
            Command::Eyes(eyes) => self.session.eyes = eyes,
            Command::Specimens(role) => self.session.specimens = role,
            Command::Target(target) => {
                self.session.target = target;
                self.session.symbols.clear();
            }
            Command::Symbols(symbols) => self.session.symbols = symbols,
            Command::Redress(theme, codes) => {
                if self.redressing.is_none() {
                    let opened = self.doc.opened();
                    self.redressing = Some({
                        let theme = (theme, self.session.symbols.clone());
                        Redressing::start(ctx, self.doc.revision, opened, theme, codes)
                    });
                    self.session.redressing = true;
                }
            }
            Command::BringTheme => self.bring_theme(ctx),
            Command::StartTheme(name) => self.start_theme(ctx, &name),
            Command::PickSlot(anchor, word) => self.pick_slot(anchor, word),
            Command::MakeSlot(only, word, slot) => self.make_slot(ctx, only.as_ref(), &word, &slot),
            Command::Export(options) => self.export(ctx, *options),
            Command::Propose(wish) => self.propose(ctx, wish),
            Command::CancelExport => {
                if let Some(running) = &self.running {
                    running.stop();
                }
            }
            Command::Path(what, text) if text.is_empty() => self.ask(ctx, &what),
            Command::Path(what, text) => self.path(&what, &from_home(&text)),
            Command::CloseBar => {
                self.bar = Bar::None;
                self.leaving = None;
            }
            Command::Discard(leaving) => self.leave(ctx, leaving),
            Command::SaveThen(leaving) => {
                // What was put off is done once it is saved, which may be after a folder was chosen.
                self.leaving = Some(leaving);
                self.save(ctx);
            }
        }
    }

    /// Takes in what the views and the keys ask for. An author who changes something or goes elsewhere has read what the
    /// bar says was done; after a change it is no longer so, "saved" above all.
    pub(super) fn hear(&mut self, commands: Vec<Command>) {
        let goes_on = |command: &Command| {
            matches!(
                command,
                Command::Edit(_)
                    | Command::Step(_)
                    | Command::ThemeEdit(_)
                    | Command::ThemeStep(_)
                    | Command::Select(_)
                    | Command::Go(..)
                    | Command::Do(Action::Show(_) | Action::Undo | Action::Redo)
            )
        };
        if matches!(self.bar, Bar::Done(_)) && commands.iter().any(goes_on) {
            self.bar = Bar::None;
        }
        self.pending.extend(commands);
    }

    pub(super) fn changed(&mut self, ctx: &egui::Context) {
        self.doc.changed();
        ctx.request_repaint();
    }

    fn act(&mut self, ctx: &egui::Context, action: Action) {
        match action {
            Action::Undo => {
                if let Some(places) = self.history.undo(&mut self.doc) {
                    self.session.show(&self.doc.kit, &places);
                    self.changed(ctx);
                }
            }
            Action::Redo => {
                if let Some(places) = self.history.redo(&mut self.doc) {
                    self.session.show(&self.doc.kit, &places);
                    self.changed(ctx);
                }
            }
            Action::New if self.doc.unsaved() => self.bar = Bar::Unsaved(Leaving::New),
            Action::New => self.ask(ctx, &PathFor::New),
            Action::Open if self.doc.unsaved() => self.bar = Bar::Unsaved(Leaving::Open),
            Action::Open => self.ask(ctx, &PathFor::Open),
            Action::Demo(at) if self.doc.unsaved() => self.bar = Bar::Unsaved(Leaving::Demo(at)),
            Action::Demo(at) => self.demo(at),
            Action::Save => self.save(ctx),
            Action::SaveAs => self.ask(ctx, &PathFor::SaveAs),
            Action::Export => self.session.select(Selection::Bundle),
            Action::WriteBundle => {
                self.session.select(Selection::Bundle);
                let options = self.locals.export.options();
                self.export(ctx, options);
            }
            Action::Show(tab) => self.session.tab = tab,
            Action::SwitchLight => {
                self.prefs.dark = !self.prefs.dark;
                ctx.set_theme(if self.prefs.dark { egui::Theme::Dark } else { egui::Theme::Light });
                self.keep_prefs();
            }
            Action::ZoomIn | Action::ZoomOut | Action::ZoomReset => {
                match action {
                    Action::ZoomIn => self.prefs.zoom_by(1),
                    Action::ZoomOut => self.prefs.zoom_by(-1),
                    _ => self.prefs.zoom = crate::app::prefs::ZOOM.0,
                }
                ctx.set_zoom_factor(self.prefs.zoom_factor());
                self.keep_prefs();
            }
            Action::ToggleFindings => {
                self.prefs.findings = !self.prefs.findings;
                self.keep_prefs();
            }
            Action::Quit if self.doc.unsaved() => self.bar = Bar::Unsaved(Leaving::Quit),
            Action::Quit => self.leave(ctx, Leaving::Quit),
        }
    }

    fn keep_prefs(&self) {
        if self.save_prefs {
            self.prefs.save();
        }
    }

    fn export(&mut self, ctx: &egui::Context, options: Options) {
        if self.running.is_none() {
            self.bar = Bar::None;
            self.running = Some(Running::start(ctx, self.doc.opened(), options));
        }
    }

    /// Sends off what is not drawn or proved yet.
    pub(super) fn ask_for(&mut self, _: &egui::Context, wanted: Wanted) {
        let drawn =
            Drawn { revision: self.doc.revision, level: self.session.level, wanted, width_px: self.desk.width_px };
        let draw = drawn.width_px > 0 && self.drawn.as_ref() != Some(&drawn);
        let prove = self.proved != Some(self.doc.revision);
        if !draw && !prove {
            return;
        }
        let kit = match &self.sent {
            Some((revision, kit)) if *revision == self.doc.revision => kit.clone(),
            _ => Arc::new(self.doc.kit.clone()),
        };
        self.sent = Some((self.doc.revision, kit.clone()));
        if draw {
            self.worker.draw(Job {
                revision: drawn.revision,
                kit: kit.clone(),
                theme: self.doc.theme.clone(),
                fonts: self.doc.fonts.clone(),
                level: drawn.level,
                wanted: drawn.wanted.clone(),
                width_px: drawn.width_px,
                first: self.desk.first.clone().filter(|_| matches!(drawn.wanted, Wanted::Pieces(_))),
                opened: matches!(drawn.wanted, Wanted::SideBySide(..)).then(|| Box::new(self.doc.opened())),
            });
            self.drawn = Some(drawn);
        }
        if prove {
            self.worker.prove(ProofJob {
                revision: self.doc.revision,
                kit,
                theme: self.doc.theme.clone(),
                fonts: self.doc.fonts.clone(),
                theme_folder: self.doc.theme_folder().map(Path::to_owned),
            });
            self.proved = Some(self.doc.revision);
        }
    }
}
