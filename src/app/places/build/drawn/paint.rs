use eframe::egui::{
    Align, Color32, CornerRadius, FontFamily, FontId, Pos2, Rect, RichText, Sense, Shape, Stroke, Ui,
    epaint::CubicBezierShape, epaint::PathStroke, pos2, text::LayoutJob, text::TextWrapping, vec2,
};

use crate::app::ctx::Ctx;
use crate::app::tokens::{BOLD, Tokens};
use crate::app::widgets::{Mark, UiExt as _, paint_mark};
use crate::diag::Severity;
use crate::flow::drawing::{self, Drawing, Edge, Kind, Node, Tie, outline, strokes};

/// Type size of a name at 100 %.
const NAME: f32 = 13.0;
/// Lines of a name.
const LINES: usize = 2;
/// Length of an arrowhead at 100 %.
const ARROW: f32 = 8.0;

/// How a node stands out.
#[derive(Clone, Copy)]
pub(super) struct Look {
    /// Under the pointer, or about to be joined.
    pub lit: bool,
    /// Has the keyboard.
    pub focused: bool,
    /// A join sets out from it.
    pub from: bool,
    /// What weighs most among its findings.
    pub found: Option<Severity>,
}

/// A length of the drawing in points of the window.
#[expect(clippy::cast_possible_truncation, reason = "drawings are far below the range of f32")]
pub(super) const fn length(value: f64) -> f32 {
    value as f32
}

fn point((x, y): (f64, f64), origin: Pos2, zoom: f32) -> Pos2 {
    origin + vec2(length(x), length(y)) * zoom
}

/// A rectangle of the drawing in the window.
pub(super) fn rect(rect: drawing::Rect, origin: Pos2, zoom: f32) -> Rect {
    Rect::from_min_size(point((rect.x, rect.y), origin, zoom), vec2(length(rect.w), length(rect.h)) * zoom)
}

/// Fill, edge and text of a kind; the shape alone tells kinds apart, the tone only helps.
fn tones(t: &Tokens, kind: Kind) -> (Color32, Color32) {
    match kind {
        Kind::Spot | Kind::Thing => (t.shelf, t.edge),
        Kind::Puzzle => (t.accent_soft, t.accent),
        Kind::Tool | Kind::Key => (t.warns_soft, t.warns),
        Kind::Lock => (t.notes_soft, t.notes),
        Kind::Box => (t.well, t.ink),
        Kind::Finish => (t.good_soft, t.good),
    }
}

/// The line above each round, with its number.
pub(super) fn rounds(ui: &Ui, drawing: &Drawing, origin: Pos2, zoom: f32) {
    let t = ui.tokens();
    let clip = ui.clip_rect();
    for line in &drawing.rounds {
        let y = point((0.0, line.y), origin, zoom).y;
        ui.painter().hline(clip.x_range(), y, Stroke::new(1.0, t.line));
        let font = FontId::new(12.0, FontFamily::Name(BOLD.into()));
        let at = pos2(clip.left() + 4.0, y + 3.0);
        ui.painter().text(at, eframe::egui::Align2::LEFT_TOP, format!("Round {}", line.round), font, t.quiet);
    }
}

/// All edges; those of the lit node stand out.
pub(super) fn edges(ui: &Ui, drawing: &Drawing, origin: Pos2, zoom: f32, lit: Option<usize>) {
    let t = ui.tokens();
    let bright = |edge: &&Edge| Some(edge.from) == lit || Some(edge.to) == lit;
    for edge in drawing.edges.iter().filter(|edge| !bright(edge)) {
        let tone = if edge.back { t.blocks } else { t.edge };
        paint_edge(ui, edge, origin, zoom, Stroke::new(1.3, tone));
    }
    for edge in drawing.edges.iter().filter(bright) {
        paint_edge(ui, edge, origin, zoom, Stroke::new(2.4, t.accent));
    }
}

fn paint_edge(ui: &Ui, edge: &Edge, origin: Pos2, zoom: f32, pen: Stroke) {
    let points: Vec<Pos2> = edge.points.iter().map(|p| point(*p, origin, zoom)).collect();
    let all = Rect::from_points(&points);
    if !ui.is_rect_visible(all.expand(ARROW)) {
        return;
    }
    let mut line: Vec<Pos2> = Vec::new();
    for pair in points.windows(2) {
        let (Some(a), Some(b)) = (pair.first(), pair.get(1)) else { continue };
        if (a.x - b.x).abs() < 0.5 {
            line.extend([*a, *b]);
            continue;
        }
        let middle = f32::midpoint(a.y, b.y);
        let curve = [*a, pos2(a.x, middle), pos2(b.x, middle), *b];
        line.extend(
            CubicBezierShape::from_points_stroke(curve, false, Color32::TRANSPARENT, PathStroke::NONE)
                .flatten(Some(0.3)),
        );
    }
    let painter = ui.painter();
    // What merely lies somewhere is dashed; what must be done is drawn through.
    if edge.tie == Tie::Holds {
        painter.extend(Shape::dashed_line(&line, pen, 5.0, 3.5));
    } else {
        painter.add(Shape::line(line, pen));
    }
    if let Some(end) = points.last() {
        let (l, w) = (ARROW * zoom.max(0.6), ARROW * 0.42 * zoom.max(0.6));
        let up = if edge.back { -1.0 } else { 1.0 };
        let head = vec![*end, *end + vec2(-w, -l * up), *end + vec2(w, -l * up)];
        painter.add(Shape::convex_polygon(head, pen.color, Stroke::NONE));
    }
}

/// The line from a node to the pointer while it is dragged.
pub(super) fn thread(ui: &Ui, from: Pos2, to: Pos2) {
    let tone = ui.tokens().accent;
    ui.painter().line_segment([from, to], Stroke::new(2.4, tone));
    ui.painter().circle_filled(to, 4.0, tone);
}

/// One node.
pub(super) fn node(ui: &Ui, node: &Node, place: Rect, zoom: f32, look: Look) {
    if !ui.is_rect_visible(place.expand(8.0)) {
        return;
    }
    let t = ui.tokens();
    let (fill, edge) = tones(t, node.kind);
    shape(ui, node.kind, place, zoom, fill, if look.lit { t.accent } else { edge }, node.round.is_none());
    if look.focused || look.from {
        let ring = Stroke::new(2.5, t.accent);
        ui.painter().rect_stroke(place.expand(4.0), CornerRadius::same(6), ring, eframe::egui::StrokeKind::Outside);
    }
    let font = if node.kind == Kind::Puzzle { FontFamily::Name(BOLD.into()) } else { FontFamily::Proportional };
    let mut job =
        LayoutJob::simple(node.name.clone(), FontId::new(NAME * zoom, font), t.ink, place.width() - 26.0 * zoom);
    job.wrap = TextWrapping { max_rows: LINES, ..job.wrap };
    job.halign = Align::Center;
    let words = ui.painter().layout_job(job);
    let at = pos2(place.center().x, place.center().y - words.size().y / 2.0);
    ui.painter().galley(at, words, t.ink);
    if let Some(severity) = look.found {
        let size = 15.0 * zoom.max(0.7);
        let mark = Rect::from_center_size(place.right_top() + vec2(-2.0, 2.0), vec2(size, size));
        ui.painter().circle_filled(mark.center(), size * 0.68, t.panel);
        paint_mark(ui, mark, Mark::severity(severity));
    }
}

/// The outline of a kind; dashed when it is never reached.
fn shape(ui: &Ui, kind: Kind, place: Rect, zoom: f32, fill: Color32, edge: Color32, dashed: bool) {
    let unit =
        drawing::Rect { x: 0.0, y: 0.0, w: f64::from(place.width() / zoom), h: f64::from(place.height() / zoom) };
    let mut line: Vec<Pos2> = outline(kind, unit).into_iter().map(|p| point(p, place.min, zoom)).collect();
    let pen = Stroke::new(1.5, edge);
    let painter = ui.painter();
    if dashed {
        painter.add(Shape::convex_polygon(line.clone(), fill, Stroke::NONE));
        line.extend(line.first().copied());
        painter.extend(Shape::dashed_line(&line, pen, 4.0, 3.0));
    } else {
        painter.add(Shape::convex_polygon(line, fill, pen));
    }
    for stroke in strokes(kind, unit) {
        let line: Vec<Pos2> = stroke.into_iter().map(|p| point(p, place.min, zoom)).collect();
        painter.add(Shape::line(line, Stroke::new(1.0, edge)));
    }
}

/// Which shape is what.
pub(super) fn legend_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 5.0;
        for kind in Kind::ALL {
            let (place, _) = ui.allocate_exact_size(vec2(34.0, 16.0), Sense::hover());
            let (fill, edge) = tones(cx.tokens, kind);
            shape(ui, kind, place.shrink2(vec2(2.0, 1.0)), 0.36, fill, edge, false);
            ui.label(RichText::new(kind.word()).size(12.5).color(cx.tokens.quiet));
            ui.add_space(7.0);
        }
        ui.label(
            RichText::new("dashed line: lies there; dashed edge: never reached").size(12.5).color(cx.tokens.quiet),
        );
    });
}
