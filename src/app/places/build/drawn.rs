//! The flow, drawn: looked at, walked through by keyboard, and joined by drags; and the same in words.

mod apart;
mod paint;
mod words;

pub use words::{facts_ui, never_ui};

use eframe::egui::containers::scroll_area::{DragScroll, ScrollSource};
use eframe::egui::{
    Button, Id, Key, Modifiers, PointerButton, Pos2, Response, Role, ScrollArea, Sense, Ui, WidgetInfo, vec2,
};

use crate::app::ctx::{Command, Ctx};
use crate::app::switches::level_ui;
use crate::app::tokens::{GAP, GAP_M, MARGIN};
use crate::app::widgets::{Mark, UiExt as _};
use crate::diag::{Anchor, Severity};
use crate::flow::connect::{Joined, join, lay_part};
use crate::flow::drawing::{Drawing, Extent, Node, Tie};
use crate::ids::PuzzleId;
use crate::kit::{Lying, Place};
use paint::Look;

/// Least and greatest size of the drawing, in parts of its own.
const ZOOM: (f32, f32) = (0.4, 2.0);
/// Puzzles up to which spots are drawn unasked: with more, the lines from them cover the rest.
const WITH_PLACES: usize = 14;
/// Least size, in parts of its own, at which the names in the drawing can be read with ease.
const READABLE: f32 = 0.7;
/// How much one press of a button changes the size.
const ZOOM_STEP: f32 = 1.25;

/// What the drawing holds that the kit does not.
#[derive(Debug)]
pub struct Drawn {
    zoom: f32,
    /// Whether the size has been chosen: before that, the drawing is made to fit as far as it can be read.
    sized: bool,
    /// Whether it is shown in words.
    in_words: bool,
    /// Whether spots and idle props are drawn, where the author has chosen.
    places: Option<bool>,
    /// The node from which a drag or a join by keyboard sets out.
    from: Option<Anchor>,
    /// Whether the pointer drags.
    dragging: bool,
    /// What the last join did, or why it did nothing, and up to which revision of the kit that stands.
    said: Option<(bool, String, u64)>,
    /// A puzzle of which one part is to be laid at a place.
    choice: Option<(PuzzleId, Vec<String>, Place)>,
    /// Two things about to be kept apart.
    one: Option<Lying>,
    other: Option<Lying>,
}

impl Default for Drawn {
    fn default() -> Self {
        Self {
            zoom: 1.0,
            sized: false,
            in_words: false,
            places: None,
            from: None,
            dragging: false,
            said: None,
            choice: None,
            one: None,
            other: None,
        }
    }
}

impl Drawn {
    /// How much is drawn: not the spots of a kit with many puzzles, unless the author wants them.
    fn extent(&self, cx: &Ctx<'_>) -> Extent {
        let places = self.places.unwrap_or(cx.kit.puzzles.len() <= WITH_PLACES);
        if places { Extent::All } else { Extent::Solving }
    }
}

/// The drawing with its tools.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn) {
    eframe::egui::Frame::new().inner_margin(eframe::egui::Margin::symmetric(MARGIN, 14)).show(ui, |ui| {
        ui.title("Flow");
        ui.lede(
            "From what lies open at the top down to the end. Click a thing to go to its fields; drag one onto another \
             to join them. By keyboard: Tab to one and press J, Tab to the other and press J; Enter goes to its fields.",
        );
        tools_ui(ui, cx, local);
        said_ui(ui, cx, local);
        ui.add_space(GAP);
        let level = cx.session.level;
        match (cx.derived.drawing(level, local.extent(cx)), cx.derived.flow(level)) {
            (_, Some(flow)) if local.in_words => words::ui(ui, cx, local, flow),
            (Some(drawing), _) => drawing_ui(ui, cx, local, drawing),
            _ => {
                ui.chip(Mark::Waiting, "being drawn");
            }
        }
    });
}

fn tools_ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn) {
    ui.horizontal_wrapped(|ui| {
        for (in_words, name) in [(false, "Drawn"), (true, "In words")] {
            if ui.add(Button::selectable(local.in_words == in_words, name)).clicked() {
                local.in_words = in_words;
            }
        }
        ui.add_space(GAP_M);
        level_ui(ui, cx);
        if local.in_words {
            return;
        }
        ui.add_space(GAP_M);
        let mut places = local.extent(cx) == Extent::All;
        if ui
            .checkbox(&mut places, "Spots")
            .on_hover_text("Draws the spots, and the props that nothing needs")
            .changed()
        {
            local.places = Some(places);
        }
        ui.add_space(GAP_M);
        if ui.lesser(local.zoom > ZOOM.0, "−", "Smaller drawing").clicked() {
            local.zoom = (local.zoom / ZOOM_STEP).max(ZOOM.0);
        }
        ui.quiet(&format!("{:.0} %", local.zoom * 100.0));
        if ui.lesser(local.zoom < ZOOM.1, "+", "Larger drawing").clicked() {
            local.zoom = (local.zoom * ZOOM_STEP).min(ZOOM.1);
        }
        if ui.lesser(true, "Fit", "Fit the drawing into the window").clicked()
            && let Some(drawing) = cx.derived.drawing(cx.session.level, local.extent(cx))
        {
            local.zoom = (ui.max_rect().width() / paint::length(drawing.width)).clamp(ZOOM.0, 1.0);
        }
    });
}

/// What the last join did, and the question that it may have left.
fn said_ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn) {
    if let (Some(from), false) = (&local.from, local.dragging) {
        let name = cx.derived.drawing(cx.session.level, Extent::All).and_then(|drawing| drawing.node(from));
        let name = name.map_or_else(|| from.to_string(), |node| node.name.clone());
        ui.quiet(&format!("Joining {name}: go to another and press J, or press Escape."));
    }
    // A later edit, or the undoing of this one, makes it old news.
    if let Some((done, words, _)) = local.said.as_ref().filter(|(.., until)| cx.doc.revision <= *until) {
        let mark = if *done { Mark::Good } else { Mark::Warns };
        ui.horizontal_wrapped(|ui| {
            crate::app::widgets::mark_ui(ui, mark, 13.0);
            ui.label(cx.say(words));
        });
    }
    let Some((puzzle, parts, place)) = local.choice.clone() else { return };
    ui.horizontal_wrapped(|ui| {
        let title = cx.kit.puzzle(&puzzle).map_or_else(|| puzzle.to_string(), |puzzle| cx.say(&puzzle.title));
        ui.label(format!("Which part of \"{title}\" is to lie there?"));
        for part in parts {
            if ui.secondary(&part.replace('-', " ")).clicked() {
                local.choice = None;
                take(cx, local, lay_part(cx.kit, &puzzle, &part, &place));
            }
        }
        if ui.lesser(true, "None", "Lay no part there").clicked() {
            local.choice = None;
        }
    });
}

/// Carries a join out, or keeps what it says.
fn take(cx: &Ctx<'_>, local: &mut Drawn, joined: Joined) {
    local.choice = None;
    match joined {
        Joined::Edits(edits, told) => {
            cx.send(Command::Step(edits));
            local.said = Some((true, told, cx.doc.revision + 1));
        }
        Joined::Parts(puzzle, parts, place) => {
            local.said = None;
            local.choice = Some((puzzle, parts, place));
        }
        Joined::Refused(why) => local.said = Some((false, why, cx.doc.revision)),
    }
}

fn drawing_ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn, drawing: &Drawing) {
    let pinched =
        ui.rect_contains_pointer(ui.available_rect_before_wrap()).then(|| ui.input(|input| input.zoom_delta()));
    if let Some(factor) = pinched.filter(|factor| (factor - 1.0).abs() > f32::EPSILON) {
        local.zoom = (local.zoom * factor).clamp(ZOOM.0, ZOOM.1);
    }
    if ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
        (local.from, local.dragging, local.choice) = (None, false, None);
    }
    paint::legend_ui(ui, cx);
    if !local.sized {
        local.sized = true;
        local.zoom = (ui.available_width() / paint::length(drawing.width)).clamp(READABLE, 1.0);
    }
    let zoom = local.zoom;
    let source = ScrollSource { drag: DragScroll::Always, ..ScrollSource::ALL };
    ScrollArea::both().id_salt("drawn flow").auto_shrink([false, false]).scroll_source(source).show(ui, |ui| {
        let size = vec2(paint::length(drawing.width), paint::length(drawing.height)) * zoom;
        let (whole, _) = ui.allocate_exact_size(size.max(ui.available_size()), Sense::hover());
        // A drawing narrower than its room stands in the middle of it.
        let shift = vec2(((whole.width() - size.x) / 2.0).max(0.0), 0.0);
        let origin = whole.min + shift;
        nodes_ui(ui, cx, local, drawing, origin);
    });
}

fn nodes_ui(ui: &mut Ui, cx: &Ctx<'_>, local: &mut Drawn, drawing: &Drawing, origin: Pos2) {
    let zoom = local.zoom;
    let place = |node: &Node| paint::rect(node.rect, origin, zoom);
    let responses: Vec<Response> = drawing
        .nodes
        .iter()
        .map(|node| {
            let response = ui.interact(place(node), Id::unique(("flow node", &node.at)), Sense::click_and_drag());
            let name = node_words(cx, drawing, node);
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
            response
        })
        .collect();
    let pointer = ui.input(|input| input.pointer.interact_pos());
    let under = |pos: Pos2| drawing.nodes.iter().position(|node| place(node).contains(pos));
    let target = pointer.filter(|_| local.dragging).and_then(under);
    let lit = responses.iter().position(|response| response.hovered() || response.has_focus());
    paint::rounds(ui, drawing, origin, zoom);
    paint::edges(ui, drawing, origin, zoom, lit);
    for (at, (node, response)) in drawing.nodes.iter().zip(&responses).enumerate() {
        let from = local.from.as_ref() == Some(&node.at);
        let look = Look {
            lit: response.hovered() || target == Some(at),
            focused: response.has_focus(),
            from,
            found: worst(cx, node),
        };
        paint::node(ui, node, place(node), zoom, look);
        if response.gained_focus() {
            response.scroll_to_me(None);
        }
        handle(ui, cx, local, node, response);
    }
    if local.dragging {
        if let (Some(from), Some(pos)) = (local.from.as_ref().and_then(|from| drawing.node(from)), pointer) {
            paint::thread(ui, place(from).center(), pos);
        }
        if !ui.input(|input| input.pointer.button_down(PointerButton::Primary)) {
            let to = pointer.and_then(under).and_then(|at| drawing.nodes.get(at));
            if let (Some(from), Some(to)) = (local.from.clone(), to)
                && from != to.at
            {
                take(cx, local, join(cx.kit, &from, &to.at));
            }
            (local.from, local.dragging) = (None, false);
        }
    }
}

/// A click, the start of a drag, or a key on a node.
fn handle(ui: &Ui, cx: &Ctx<'_>, local: &mut Drawn, node: &Node, response: &Response) {
    if response.clicked() {
        cx.send(Command::Go(node.at.clone(), None));
    }
    if response.drag_started_by(PointerButton::Primary) {
        (local.from, local.dragging, local.said) = (Some(node.at.clone()), true, None);
    }
    if response.has_focus() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::J)) {
        match local.from.take() {
            None => (local.from, local.said) = (Some(node.at.clone()), None),
            Some(from) => take(cx, local, join(cx.kit, &from, &node.at)),
        }
    }
}

/// What weighs most among the findings of a node.
fn worst(cx: &Ctx<'_>, node: &Node) -> Option<Severity> {
    let here = |anchor: &Anchor| match (anchor, &node.at) {
        (Anchor::Puzzle(a, _), Anchor::Puzzle(b, _)) => a == b,
        (a, b) => a == b,
    };
    cx.derived.findings().iter().filter(|finding| here(&finding.anchor)).map(|finding| finding.severity).min()
}

/// A node as a screen reader says it: what it is, when, and what it is tied to.
fn node_words(cx: &Ctx<'_>, drawing: &Drawing, node: &Node) -> String {
    let mut words = format!("{} {}", node.kind.word(), node.name);
    match node.round {
        Some(0) => words.push_str(", open from the start"),
        Some(round) => words.push_str(&format!(", round {round}")),
        None => words.push_str(", never reached"),
    }
    let own = drawing.nodes.iter().position(|other| other.at == node.at);
    for edge in &drawing.edges {
        let name = |at: usize| drawing.nodes.get(at).map_or("", |node| node.name.as_str());
        let tie = match (edge.tie, Some(edge.from) == own, Some(edge.to) == own) {
            (Tie::Holds, _, true) => format!(", lies at or in {}", name(edge.from)),
            (Tie::Needs, _, true) => format!(", needs {}", name(edge.from)),
            (Tie::Opens, true, _) => format!(", opens {}", name(edge.to)),
            (Tie::Shuts, true, _) => format!(", shuts {}", name(edge.to)),
            _ => continue,
        };
        words.push_str(&tie);
    }
    if let Some(severity) = worst(cx, node) {
        words.push_str(&format!("; a finding {} here", severity.word()));
    }
    words
}
