use eframe::egui::{
    Checkbox, DragValue, FontFamily, FontId, Rect, Role, Sense, Stroke, StrokeKind, TextEdit, Ui, Vec2, WidgetInfo,
    pos2, vec2,
};

use super::fresh;
use crate::app::ctx::{Command, Ctx};
use crate::app::desk::Desk;
use crate::app::session::Selection;
use crate::app::tokens::{BOLD, GAP, GAP_M};
use crate::app::widgets::UiExt as _;
use crate::mechanics::sample::Facts;
use crate::mechanics::{AnyMechanic, MECHANICS, Meta};
use crate::script::capital;

/// What is looked for among the mechanics.
#[derive(Debug)]
pub struct Sought {
    words: String,
    paper_only: bool,
    no_colour: bool,
    no_tool: bool,
    youngest: u8,
}

/// An age from which every puzzle can be done.
const GROWN: u8 = 18;

impl Default for Sought {
    fn default() -> Self {
        Self { words: String::new(), paper_only: false, no_colour: false, no_tool: false, youngest: GROWN }
    }
}

impl Sought {
    /// Whether a mechanic is among those looked for. What is not known yet, because its sample is being drawn, keeps
    /// none away.
    fn fits(&self, meta: &Meta, facts: Option<&Facts>) -> bool {
        let text = format!("{} {} {} {}", meta.name, meta.guests, meta.prints, meta.host).to_lowercase();
        self.words.to_lowercase().split_whitespace().all(|word| text.contains(word))
            && !(self.paper_only && facts.is_some_and(|facts| !facts.paper_only))
            && !(self.no_colour && meta.colour)
            && (!self.no_tool || meta.tools.is_empty())
            && meta.least_age <= self.youngest
    }
}

/// Size of a sample's picture, where there is room for it.
const PICTURE: Vec2 = vec2(150.0, 104.0);
/// Between the edge of a card and what stands on it.
const EDGE: f32 = 12.0;

/// All mechanics, each with a sample in the theme, one line and what it takes; one of them becomes a puzzle.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, looked: &str, sought: &mut Sought, desk: &mut Desk) {
    ui.title("All mechanics");
    ui.lede("Every kind of puzzle, as it looks in this theme. Click one to see it larger and to make a puzzle of it.");
    sought_ui(ui, sought);
    let fits = |mechanic: &&&'static dyn AnyMechanic| {
        let meta = mechanic.meta();
        sought.fits(meta, desk.sample(meta.id).and_then(|item| item.facts.as_ref()))
    };
    let found: Vec<&'static dyn AnyMechanic> = MECHANICS.iter().filter(fits).copied().collect();
    ui.quiet(&format!("{} of {}", found.len(), MECHANICS.len()));
    ui.add_space(GAP);
    for mechanic in found {
        card_ui(ui, cx, mechanic, looked == mechanic.meta().id, desk);
        ui.add_space(GAP);
    }
}

fn sought_ui(ui: &mut Ui, sought: &mut Sought) {
    ui.horizontal(|ui| {
        let label = ui.label("Search");
        let width = (ui.available_width() - GAP_M).clamp(80.0, 300.0);
        let field = TextEdit::singleline(&mut sought.words).hint_text("fold, count, key …").desired_width(width);
        ui.add(field).labelled_by(label.id);
    });
    ui.horizontal_wrapped(|ui| {
        ui.add(Checkbox::new(&mut sought.paper_only, "Paper only"));
        ui.add(Checkbox::new(&mut sought.no_colour, "No colours to tell apart"));
        ui.add(Checkbox::new(&mut sought.no_tool, "No tool"));
    });
    ui.horizontal(|ui| {
        let label = ui.label("Youngest guest");
        let years = DragValue::new(&mut sought.youngest).range(3..=GROWN);
        let years = years
            .custom_formatter(
                |years, _| if years >= f64::from(GROWN) { "any age".into() } else { format!("{years} years") },
            )
            .custom_parser(|text| text.trim_end_matches(|c: char| !c.is_ascii_digit()).parse().ok());
        ui.add(years).labelled_by(label.id);
    });
    ui.add_space(GAP);
}

fn card_ui(ui: &mut Ui, cx: &Ctx<'_>, mechanic: &'static dyn AnyMechanic, looked: bool, desk: &mut Desk) {
    let (meta, t) = (mechanic.meta(), cx.tokens);
    let facts = desk.sample(meta.id).and_then(|item| item.facts.clone());
    let width = ui.available_width();
    let picture = PICTURE * (width / (4.0 * PICTURE.x)).clamp(0.5, 1.0);
    let room = (width - picture.x - 3.0 * EDGE).max(60.0);
    let plain = |size: f32| FontId::new(size, FontFamily::Proportional);
    let words = [
        (meta.name.to_owned(), FontId::new(15.5, FontFamily::Name(BOLD.into())), t.ink),
        (format!("Guests {}.", meta.guests), plain(14.5), t.ink),
        (about(meta, facts.as_ref()), plain(13.0), t.quiet),
    ]
    .map(|(text, font, tone)| ui.painter().layout(text, font, tone, room));
    let high: f32 = words.iter().map(|words| words.size().y + 4.0).sum();
    let height = high.max(picture.y) + 2.0 * EDGE;
    let (rect, response) = ui.allocate_exact_size(vec2(width, height), Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, looked, meta.name));
    if response.gained_focus() {
        response.scroll_to_me(None);
    }
    if response.clicked() {
        cx.send(Command::Select(Selection::Gallery(meta.id.to_owned())));
    }
    if ui.is_rect_visible(rect) {
        let ground = if looked {
            t.accent_soft
        } else if response.hovered() {
            t.hover
        } else {
            t.shelf
        };
        ui.painter().rect_filled(rect, 7, ground);
        let edge = if response.has_focus() { Stroke::new(2.0, t.accent) } else { Stroke::new(1.0, t.line) };
        ui.painter().rect_stroke(rect, 7, edge, StrokeKind::Inside);
        let corner = rect.min + vec2(EDGE, (height - picture.y) / 2.0);
        desk.sample_ui(ui, cx, meta.id, Rect::from_min_size(corner, picture));
        let mut at = pos2(rect.left() + picture.x + 2.0 * EDGE, rect.top() + EDGE);
        for words in words {
            let high = words.size().y;
            ui.painter().galley(at, words, t.ink);
            at.y += high + 4.0;
        }
    }
    if looked {
        ui.group_card(|ui| {
            for (head, words) in [
                ("What fixes the order", meta.order),
                ("What is printed", meta.prints),
                ("What the host does", meta.host),
            ] {
                ui.strong_small(head);
                ui.label(format!("{}.", capital(words)));
            }
            if let Some(facts) = facts.filter(|facts| !facts.things.is_empty()) {
                ui.strong_small("What it needs beyond paper");
                ui.label(format!("{}.", capital(&facts.things.join(", "))));
            }
            ui.add_space(GAP);
            if ui.primary("Make a puzzle of it").clicked()
                && let Some((edits, to)) = fresh::puzzle_of(cx.kit, &cx.doc.theme, mechanic)
            {
                cx.send(Command::Step(edits));
                cx.send(Command::Select(to));
            }
        });
    }
}

/// Minutes, ages and what it takes, in a line.
fn about(meta: &Meta, facts: Option<&Facts>) -> String {
    let (least, most) = meta.minutes;
    let mut about = vec![format!("{least} to {most} min, from {} years (estimates)", meta.least_age)];
    if let Some(facts) = facts {
        about.push(if facts.paper_only { "paper only".into() } else { format!("needs {}", facts.things.join(", ")) });
    }
    if meta.colour {
        about.push("colours are told apart".into());
    }
    about.join("  ·  ")
}
