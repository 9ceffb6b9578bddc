use eframe::egui::{
    Align2, FontFamily, FontId, Response, RichText, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, WidgetInfo, pos2,
    vec2,
};

use crate::app::ctx::{Command, Ctx};
use crate::app::places::build::fresh;
use crate::app::session::{Selection, Tab};
use crate::app::tokens::BOLD;
use crate::app::widgets::{Mark, UiExt as _, follow_focus, paint_mark};
use crate::diag::Severity;
use crate::ids::PuzzleId;
use crate::kit::NoteKind;
use crate::kit::edit::Edit;

/// The outline: what there is at this place, and which of it is in hand.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ScrollArea::vertical().id_salt(("outline", cx.session.tab)).auto_shrink([false, false]).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 1.0;
        ui.add_space(12.0);
        match cx.session.tab {
            Tab::Write => write_ui(ui, cx),
            Tab::Build => build_ui(ui, cx),
            Tab::Dress => {
                head_ui(ui, "Look");
                row_ui(ui, cx, "Theme", Selection::Theme, None);
                row_ui(ui, cx, "Palette", Selection::Palette, None);
                row_ui(ui, cx, "Lettering", Selection::Lettering, None);
                row_ui(ui, cx, "Pictures", Selection::Pictures, None);
                head_ui(ui, "Words");
                row_ui(ui, cx, "Words", Selection::Words, None);
                row_ui(ui, cx, "Dressings", Selection::Dressings, None);
                row_ui(ui, cx, "Leftovers", Selection::Leftovers, None);
            }
            Tab::Prove => {
                head_ui(ui, "The kit");
                row_ui(ui, cx, "Findings", Selection::Findings, worst(cx));
                row_ui(ui, cx, "Flow", Selection::Flow, None);
                row_ui(ui, cx, "Codes", Selection::Codes, None);
                head_ui(ui, "The evening");
                row_ui(ui, cx, "Rehearsal", Selection::Rehearsal, None);
                row_ui(ui, cx, "Plays", Selection::Plays, None);
                head_ui(ui, "Readings");
                for puzzle in &cx.kit.puzzles {
                    let mark = verdict(cx, &puzzle.id);
                    row_ui(ui, cx, &cx.say(&puzzle.title), Selection::Readings(puzzle.id.clone()), mark);
                }
            }
            Tab::Print => {
                head_ui(ui, "On paper");
                row_ui(ui, cx, "Sheets", Selection::Sheets, None);
                row_ui(ui, cx, "Pieces", Selection::Pieces, None);
                head_ui(ui, "Hand over");
                row_ui(ui, cx, "Bundle", Selection::Bundle, None);
            }
        }
        ui.add_space(16.0);
        follow_focus(ui, ui.min_rect());
    });
}

fn write_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    head_ui(ui, "Story");
    row_ui(ui, cx, "Letter", Selection::Letter, None);
    row_ui(ui, cx, "Title and guests", Selection::Facts, None);
    head_ui(ui, "Smaller texts");
    for note in &cx.kit.notes {
        let kind = match note.kind {
            NoteKind::Note => "note",
            NoteKind::Sign => "sign",
            NoteKind::Closing => "closing card",
        };
        let name = if note.title.is_empty() { note.id.to_string() } else { cx.say(&note.title) };
        row_ui(ui, cx, &format!("{name}  ·  {kind}"), Selection::Note(note.id.clone()), None);
    }
    add_ui(ui, cx, "Add a note", || fresh::note(cx.kit));
    head_ui(ui, "Hints");
    for puzzle in &cx.kit.puzzles {
        row_ui(ui, cx, &cx.say(&puzzle.title), Selection::Hints(puzzle.id.clone()), None);
    }
    row_ui(ui, cx, "Play levels", Selection::Levels, None);
}

fn build_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    head_ui(ui, "Together");
    row_ui(ui, cx, "Flow", Selection::Drawn, None);
    head_ui(ui, "Puzzles");
    for puzzle in &cx.kit.puzzles {
        let mark = verdict(cx, &puzzle.id);
        row_ui(ui, cx, &cx.say(&puzzle.title), Selection::Puzzle(puzzle.id.clone()), mark);
    }
    gallery_ui(ui, cx);
    head_ui(ui, "Locks");
    for lock in &cx.kit.locks {
        row_ui(ui, cx, &cx.say(&lock.name), Selection::Lock(lock.id.clone()), None);
    }
    add_ui(ui, cx, "Add a lock", || fresh::lock(cx.kit, &cx.doc.theme.theme));
    head_ui(ui, "Boxes");
    for item in &cx.kit.boxes {
        row_ui(ui, cx, &cx.say(&item.name), Selection::Box(item.id.clone()), None);
    }
    add_ui(ui, cx, "Add a box", || fresh::box_def(cx.kit));
    head_ui(ui, "Spots");
    for spot in &cx.kit.spots {
        row_ui(ui, cx, &cx.say(&spot.name), Selection::Spot(spot.id.clone()), None);
    }
    add_ui(ui, cx, "Add a spot", || fresh::spot(cx.kit));
    head_ui(ui, "Props");
    for prop in &cx.kit.props {
        row_ui(ui, cx, &cx.say(&prop.name), Selection::Prop(prop.id.clone()), None);
    }
    add_ui(ui, cx, "Add a prop", || fresh::prop(cx.kit));
    head_ui(ui, "The end");
    row_ui(ui, cx, "How it ends", Selection::Finish, None);
}

/// The mark of a puzzle's verdict at the level looked at.
fn verdict(cx: &Ctx<'_>, id: &PuzzleId) -> Option<Mark> {
    let Some(laid) = cx.derived.puzzle(cx.session.level, id) else { return Some(Mark::Waiting) };
    Some(Mark::verdict(laid.verdict))
}

fn worst(cx: &Ctx<'_>) -> Option<Mark> {
    if !cx.derived.proven() {
        return Some(Mark::Waiting);
    }
    let worst: Option<Severity> = cx.derived.findings().iter().map(|finding| finding.severity).min();
    Some(worst.map_or(Mark::Good, Mark::severity))
}

fn head_ui(ui: &mut Ui, text: &str) {
    ui.add_space(14.0);
    ui.horizontal(|ui| {
        ui.add_space(12.0);
        let font = FontId::new(12.5, FontFamily::Name(BOLD.into()));
        ui.label(RichText::new(text).font(font).color(ui.tokens().quiet));
    });
    ui.add_space(3.0);
}

/// A row of the outline.
fn row_ui(ui: &mut Ui, cx: &Ctx<'_>, text: &str, to: Selection, mark: Option<Mark>) {
    let chosen = cx.session.selection(cx.kit) == to;
    let shown = if text.trim().is_empty() { "untitled" } else { text };
    let response = bar_ui(ui, cx, shown, chosen, false);
    if let Some(mark) = mark {
        let rect = eframe::egui::Rect::from_center_size(
            pos2(response.rect.right() - 18.0, response.rect.center().y),
            vec2(12.0, 12.0),
        );
        paint_mark(ui, rect, mark);
    }
    if response.clicked() {
        cx.send(Command::Select(to));
    }
}

/// The row that adds a puzzle: its kind is chosen among all mechanics, whichever of them is looked at.
fn gallery_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let open = matches!(cx.session.selection(cx.kit), Selection::Gallery(_));
    if bar_ui(ui, cx, "Add a puzzle", open, true).clicked() && !open {
        cx.send(Command::Select(Selection::Gallery(String::new())));
    }
}

/// A row that adds something, and takes it in hand with the keyboard in its first field.
fn add_ui(ui: &mut Ui, cx: &Ctx<'_>, text: &str, make: impl FnOnce() -> (Edit, Selection)) {
    if bar_ui(ui, cx, text, false, true).clicked() {
        let (edit, to) = make();
        cx.send(Command::Step(vec![edit]));
        cx.send(to.anchor().map_or_else(|| Command::Select(to.clone()), |at| Command::Go(at, None)));
    }
}

fn bar_ui(ui: &mut Ui, cx: &Ctx<'_>, text: &str, chosen: bool, adds: bool) -> Response {
    let t = cx.tokens;
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 30.0), Sense::click());
    response.widget_info(|| {
        if adds {
            WidgetInfo::labeled(Role::Button, true, text)
        } else {
            WidgetInfo::selected(Role::Button, true, chosen, text)
        }
    });
    let body = rect.shrink2(vec2(6.0, 1.0));
    let painter = ui.painter();
    if chosen {
        painter.rect_filled(body, 6, t.accent_soft);
        let edge = eframe::egui::Rect::from_min_max(body.left_top(), pos2(body.left() + 3.0, body.bottom()));
        painter.rect_filled(edge, 2, t.accent);
    } else if response.hovered() {
        painter.rect_filled(body, 6, t.hover);
    }
    if response.has_focus() {
        painter.rect_stroke(body, 6, Stroke::new(2.0, t.accent), StrokeKind::Inside);
    }
    let tone = if adds { t.accent } else { t.ink };
    let left = body.left() + 12.0;
    let left = if adds {
        let middle = pos2(left + 4.0, body.center().y);
        let pen = Stroke::new(1.6, tone);
        painter.line_segment([middle - vec2(4.5, 0.0), middle + vec2(4.5, 0.0)], pen);
        painter.line_segment([middle - vec2(0.0, 4.5), middle + vec2(0.0, 4.5)], pen);
        left + 16.0
    } else {
        left
    };
    let room = body.right() - left - 30.0;
    let job = eframe::egui::text::LayoutJob::simple_singleline(
        text.to_owned(),
        FontId::new(14.5, FontFamily::Proportional),
        tone,
    );
    let mut job = job;
    job.wrap = eframe::egui::text::TextWrapping::truncate_at_width(room);
    let words = ui.painter().layout_job(job);
    let at = Align2::LEFT_CENTER.align_size_within_rect(
        words.size(),
        eframe::egui::Rect::from_min_max(pos2(left, body.top()), body.right_bottom()),
    );
    let cut = words.elided;
    ui.painter().galley(at.min, words, tone);
    if cut { response.on_hover_text(text) } else { response }
}
