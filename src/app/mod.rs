//! The desktop program: five places in the order of the job, Write · Build · Dress · Prove · Print.
//!
//! On the left stands where one is in the kit, in the middle what is edited, on the right the live face or sheet
//! of exactly that thing, below the findings. Views only read the kit and send commands; `App::logic`
//! carries them out between frames. Proofs and pictures are made by the worker thread.

mod action;
mod bars;
mod change;
mod ctx;
mod derived;
mod desk;
mod dialogs;
mod doc;
mod export;
mod findings;
mod fonts;
mod header;
mod history;
mod logic;
mod outline;
mod paths;
mod places;
mod prefs;
mod preview;
mod proposing;
mod redressing;
mod season;
mod session;
mod switches;
mod tokens;
mod widgets;
mod worker;

use std::path::PathBuf;
use std::sync::Arc;

use eframe::egui::{self, CentralPanel, Frame, Margin, Panel, Stroke, Ui, UiBuilder, ViewportBuilder};

use crate::app::bars::Bar;
use crate::app::ctx::{Command, Ctx, Leaving};
use crate::app::derived::Derived;
use crate::app::desk::Desk;
use crate::app::dialogs::{Asked, Dialogs, PathField, Portal};
use crate::app::doc::Doc;
use crate::app::export::Running;
use crate::app::history::History;
use crate::app::places::Locals;
use crate::app::prefs::Prefs;
use crate::app::preview::Wanted;
use crate::app::proposing::Proposing;
use crate::app::redressing::Redressing;
use crate::app::session::{Selection, Session};
use crate::app::tokens::{BODY, DESK, FIELDS, OUTLINE, Tokens};
use crate::app::worker::Worker;
use crate::bundle::Opened;
use crate::diag::{Hinted, Trouble};
use crate::files::Watch;
use crate::kit::Kit;
use crate::theme::PictureKind;

/// First size of the window.
const WINDOW: [f32; 2] = [1360.0, 860.0];
/// Least height of the open list of findings: its head and two rows.
const LISTED: f32 = 122.0;
/// Height of the list of findings at first; one that is shown whole within it cannot be dragged.
const FEW: f32 = 168.0;
/// Below this width a window is small.
const SMALL: f32 = 1100.0;
/// Least size of the window: the outline, a column and the desk still fit.
const LEAST: [f32; 2] = [900.0, 560.0];

/// Opens the window on a kit and returns when it is closed.
///
/// # Errors
/// When there is no display to open a window on.
pub fn run(opened: Opened) -> Hinted<()> {
    let viewport = ViewportBuilder::default()
        .with_title("Inklatch")
        .with_app_id("inklatch")
        .with_inner_size(WINDOW)
        .with_min_inner_size(LEAST);
    let options = eframe::NativeOptions { viewport, centered: true, ..eframe::NativeOptions::default() };
    let make = move |cx: &eframe::CreationContext<'_>| -> Result<Box<dyn eframe::App>, _> {
        Ok(Box::new(App::new(&cx.egui_ctx, opened, Prefs::load(), Box::new(Portal), true)))
    };
    eframe::run_native("inklatch", options, Box::new(make)).map_err(|error| {
        // The library's text leads with where in its own source it gave up; the reason stands last.
        let text = error.to_string();
        let reason = text.rsplit(": ").next().unwrap_or(&text).trim_end_matches('.');
        Trouble::new(format!("no window can be opened: {reason}"))
            .hint("start it in a desktop session, with DISPLAY or WAYLAND_DISPLAY set")
            .hint("`inklatch export` and `inklatch check` work without a window")
    })
}

/// The program's state.
pub struct App {
    doc: Doc,
    session: Session,
    prefs: Prefs,
    save_prefs: bool,
    history: History,
    derived: Derived,
    desk: Desk,
    locals: Locals,
    bar: Bar,
    worker: Worker,
    dialogs: Box<dyn Dialogs>,
    asked: Option<Asked>,
    running: Option<Running>,
    /// Codes that are being looked for.
    proposing: Option<Proposing>,
    redressing: Option<Redressing>,
    /// The folders in which other programs may change what is open, and the watch over them.
    watch: (Vec<(PathBuf, bool)>, Option<Watch>),
    /// The picture of a theme for which a file is being chosen.
    replacing: Option<(PictureKind, String)>,
    pending: Vec<Command>,
    /// What was sent to be drawn last, so that nothing is asked for twice.
    drawn: Option<logic::Drawn>,
    proved: Option<u64>,
    /// The kit as it was last handed to the threads.
    sent: Option<(u64, Arc<Kit>)>,
    /// What is to be done once the kit is saved.
    leaving: Option<Leaving>,
    /// The window's title as last set.
    title: String,
    may_close: bool,
}

impl App {
    /// The program on an opened kit. With `keep` preferences are saved.
    #[must_use]
    fn new(ctx: &egui::Context, opened: Opened, prefs: Prefs, dialogs: Box<dyn Dialogs>, keep: bool) -> Self {
        ctx.set_fonts(fonts::definitions());
        tokens::install(ctx);
        ctx.options_mut(|options| options.zoom_with_keyboard = false);
        ctx.set_theme(if prefs.dark { egui::Theme::Dark } else { egui::Theme::Light });
        ctx.set_zoom_factor(prefs.zoom_factor());
        Self {
            doc: Doc::new(opened),
            session: Session::default(),
            prefs,
            save_prefs: keep,
            history: History::default(),
            derived: Derived::default(),
            desk: Desk::default(),
            locals: Locals::default(),
            bar: Bar::None,
            worker: Worker::start(ctx),
            dialogs,
            asked: None,
            running: None,
            proposing: None,
            redressing: None,
            watch: (Vec::new(), None),
            replacing: None,
            pending: Vec::new(),
            drawn: None,
            proved: None,
            sent: None,
            leaving: None,
            title: String::new(),
            may_close: false,
        }
    }

    /// The program for tests: no portal, no saved preferences.
    #[must_use]
    pub fn plain(ctx: &egui::Context, opened: Opened, dark: bool) -> Self {
        Self::new(ctx, opened, Prefs { dark, ..Prefs::default() }, Box::new(PathField), false)
    }

    /// The kit as it stands.
    #[must_use]
    pub const fn kit(&self) -> &Kit {
        &self.doc.kit
    }

    /// How many steps can be taken back.
    #[must_use]
    pub fn steps(&self) -> usize {
        self.history.len()
    }

    /// Whether what is looked at is drawn as it stands now.
    #[must_use]
    pub fn drawn(&self) -> bool {
        self.drawn.as_ref().is_some_and(|drawn| self.desk.done(&drawn.wanted, self.doc.revision))
    }

    /// Whether the kit as it stands is proved and drawn.
    #[must_use]
    pub fn at_rest(&self) -> bool {
        self.derived.proven()
            && !self.derived.stale(self.doc.revision)
            && !self.derived.mending()
            && self.drawn()
            && self.running.is_none()
            && self.proposing.is_none()
            && self.redressing.is_none()
    }
}

impl eframe::App for App {
    fn logic(&mut self, ctx: &egui::Context, _: &mut eframe::Frame) {
        self.before(ctx);
    }

    fn ui(&mut self, ui: &mut Ui, _: &mut eframe::Frame) {
        let cx = Ctx::new(&self.doc, &self.derived, &self.session, &self.prefs, &self.history, ui.ctx().theme());
        let wanted = places::wanted(&cx);
        panels(ui, &cx, &mut self.bar, &mut self.desk, &mut self.locals, &wanted);
        let commands = cx.into_commands();
        self.hear(commands);
        self.session.jump = None;
        let ctx = ui.ctx().clone();
        self.drain(&ctx);
        self.ask_for(&ctx, wanted);
    }

    fn clear_color(&self, visuals: &egui::Visuals) -> [f32; 4] {
        visuals.panel_fill.to_normalized_gamma_f32()
    }

    fn persist_egui_memory(&self) -> bool {
        false
    }
}

/// The window. The panels stand in the order in which the keyboard goes through them, which is that of reading: header,
/// outline, fields, desk, findings. The room for those below and on the right is left free before they are drawn.
fn panels(ui: &mut Ui, cx: &Ctx<'_>, bar: &mut Bar, desk: &mut Desk, locals: &mut Locals, wanted: &Wanted) {
    let t: &Tokens = cx.tokens;
    let shelf = |margin: Margin| Frame::new().fill(t.shelf).inner_margin(margin);
    Panel::top("header")
        .exact_size(58.0)
        .frame(shelf(Margin::symmetric(tokens::MARGIN, 0)))
        .show(ui, |ui| header::ui(ui, cx));
    let strip = Strip::of(ui, cx);
    if let Bar::Done(_) = bar {
        bars::floating(ui, cx, bar, strip.height);
    } else if let Some(ground) = bar.ground(t) {
        let frame = Frame::new().fill(ground).inner_margin(Margin::symmetric(tokens::MARGIN, 10));
        Panel::top("bar").frame(frame).show(ui, |ui| bars::ui(ui, cx, bar));
    }
    let mut above = ui.available_rect_before_wrap();
    above.max.y -= strip.height;
    let mut upper = ui.new_child(UiBuilder::new().id_salt("above the findings").max_rect(above));
    upper.set_clip_rect(above.intersect(ui.clip_rect()));
    // Outline and desk give way, so that in a small window and at 200 % the fields keep their room.
    // Small and large windows keep widths of their own, so that a window made small and large again is as it was.
    let width = upper.available_width();
    let small = width < SMALL;
    Panel::left(if small { "outline, small" } else { "outline" })
        .resizable(true)
        .default_size(OUTLINE)
        .size_range(130.0..=(width * 0.21).clamp(130.0, 380.0))
        .frame(shelf(Margin::ZERO))
        .show(&mut upper, |ui| outline::ui(ui, cx));
    let most = (upper.available_width() - (width * 0.46).min(FIELDS)).clamp(180.0, 900.0);
    // The drawn flow shows no printed thing, and takes the whole width.
    let name = (cx.session.selection(cx.kit) != Selection::Drawn).then_some(if small { "desk, small" } else { "desk" });
    let mut fields = upper.available_rect_before_wrap();
    fields.max.x -= name.map_or(0.0, |name| kept(&upper, name, DESK).clamp(180.0, most));
    let mut middle = upper.new_child(UiBuilder::new().id_salt("fields").max_rect(fields));
    CentralPanel::default()
        .frame(Frame::new().fill(t.panel).stroke(Stroke::NONE))
        .show(&mut middle, |ui| places::ui(ui, cx, locals, desk));
    if let Some(name) = name {
        let shown = Panel::right(name)
            .resizable(true)
            .default_size(DESK)
            .size_range(180.0..=most)
            .frame(Frame::new().fill(t.desk).inner_margin(Margin { left: 20, right: 8, top: 14, bottom: 8 }))
            .show(&mut upper, |ui| desk.ui(ui, cx, wanted));
        keep(&upper, name, shown.response.rect.width());
    }
    let frame = shelf(Margin::symmetric(tokens::MARGIN, 8));
    let shown = strip.panel().frame(frame).show(ui, |ui| findings::ui(ui, cx));
    keep(ui, strip.name, shown.response.rect.height());
}

/// The size that a panel had in the frame before: the rest is drawn first, and leaves it so much room.
fn kept(ui: &Ui, name: &str, usual: f32) -> f32 {
    ui.data(|data| data.get_temp(egui::Id::unique(("size of", name)))).unwrap_or(usual)
}

fn keep(ui: &Ui, name: &str, size: f32) {
    let id = egui::Id::unique(("size of", name));
    let before: Option<f32> = ui.data(|data| data.get_temp(id));
    if before.is_none_or(|before| (before - size).abs() > 0.5) {
        ui.data_mut(|data| data.insert_temp(id, size));
        ui.ctx().request_repaint();
    }
}

/// The strip of findings: how high it is, and whether that can be dragged.
struct Strip {
    /// Panels by name, so that the height of the open one outlives the closed one.
    name: &'static str,
    height: f32,
    /// The heights between which it can be dragged, if it can.
    range: Option<(f32, f32)>,
}

impl Strip {
    fn of(ui: &Ui, cx: &Ctx<'_>) -> Self {
        let full = findings::full_height(cx);
        let most = (ui.available_height() - BODY).clamp(LISTED, 460.0);
        if !findings::listed(cx) {
            return Self { name: "findings, closed", height: 46.0, range: None };
        }
        // A few rows need no more than their height, and leave that of a long list as the author dragged it.
        if full < FEW {
            return Self { name: "findings, few", height: full.clamp(LISTED, most), range: None };
        }
        let name = "findings";
        Self { name, height: kept(ui, name, FEW).clamp(LISTED, most), range: Some((LISTED, most)) }
    }

    fn panel(&self) -> Panel {
        let panel = Panel::bottom(self.name);
        match self.range {
            Some((least, most)) => panel.resizable(true).default_size(FEW).size_range(least..=most),
            None => panel.resizable(false).exact_size(self.height),
        }
    }
}
