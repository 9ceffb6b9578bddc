//! Bars: below the header what went wrong, and the questions that would elsewhere be windows in the way; above the
//! findings what was done.

use eframe::egui::{Align2, Area, Color32, Frame, Id, Key, Margin, Order, RichText, Stroke, TextEdit, Ui, vec2};

use crate::app::ctx::{Command, Ctx, Leaving, PathFor};
use crate::app::tokens::{MARGIN, RADIUS, Tokens};
use crate::app::widgets::UiExt as _;
use crate::diag::{Anchor, Trouble};

/// Greatest width of what tells that something was done.
const FLOATING: f32 = 860.0;

/// A word picked in a text, on its way to become a slot.
#[derive(Clone, Debug)]
pub struct Picked {
    /// Where it was picked.
    pub anchor: Anchor,
    /// The word.
    pub word: String,
    /// The slot's name, as typed so far.
    pub slot: String,
    /// How often it stands in the text where it was picked, and in all texts.
    pub places: (usize, usize),
}

/// The bar that is shown, if any.
#[derive(Clone, Debug, Default)]
pub enum Bar {
    /// None.
    #[default]
    None,
    /// Something was done.
    Done(String),
    /// Something went wrong.
    Trouble(Trouble),
    /// A path is asked for; the text typed so far.
    Path(PathFor, String),
    /// A word becomes a slot.
    Slot(Picked),
    /// Unsaved changes are in the way.
    Unsaved(Leaving),
}

impl Bar {
    /// The ground on which it stands; none when there is no bar.
    #[must_use]
    pub const fn ground(&self, t: &Tokens) -> Option<Color32> {
        match self {
            Self::None => None,
            Self::Done(_) => Some(t.good_soft),
            Self::Trouble(_) => Some(t.blocks_soft),
            Self::Path(..) | Self::Slot(_) => Some(t.accent_soft),
            Self::Unsaved(_) => Some(t.warns_soft),
        }
    }
}

/// Tells what was done, above the strip of findings, over the desk, which only shows. It comes when the author has asked for something
/// else and goes with the next change, so it must not move what the pointer is at: a second click would hit another thing.
pub fn floating(ui: &Ui, cx: &Ctx<'_>, bar: &mut Bar, strip: f32) {
    let t = cx.tokens;
    let margin = f32::from(MARGIN);
    let room = ui.ctx().content_rect().width() - 2.0 * margin;
    let area = Area::new(Id::unique("what was done")).order(Order::Foreground);
    area.anchor(Align2::RIGHT_BOTTOM, vec2(-margin, -strip - 12.0)).show(ui.ctx(), |ui| {
        let frame = Frame::new().fill(t.good_soft).stroke(Stroke::new(1.0, t.good)).corner_radius(RADIUS);
        frame.inner_margin(Margin::symmetric(16, 8)).show(ui, |ui| {
            ui.set_max_width(room.min(FLOATING));
            self::ui(ui, cx, bar);
        });
    });
}

/// Draws the bar. The text of the path field is the bar's own until it is sent.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, bar: &mut Bar) {
    let t = cx.tokens;
    ui.horizontal_wrapped(|ui| match bar {
        Bar::None => {}
        Bar::Done(words) => {
            ui.label(RichText::new(words.as_str()).color(t.good));
            close_ui(ui, cx);
        }
        Bar::Trouble(trouble) => {
            let head = trouble.place.as_ref().map_or_else(String::new, |place| format!("{place}: "));
            ui.label(RichText::new(format!("{head}{}", trouble.message)).color(t.blocks));
            for hint in &trouble.hints {
                ui.label(RichText::new(format!("— {hint}")).color(t.ink));
            }
            close_ui(ui, cx);
        }
        Bar::Path(what, text) => path_ui(ui, cx, what, text),
        Bar::Slot(picked) => slot_ui(ui, cx, picked),
        Bar::Unsaved(leaving) => {
            ui.label(RichText::new("The kit has changes that are not saved.").color(t.warns));
            let (save, discard) = match leaving {
                Leaving::Quit => ("Save and close", "Close without saving"),
                Leaving::New => ("Save, then begin", "Begin without saving"),
                Leaving::Open | Leaving::Demo(_) => ("Save, then open", "Open without saving"),
            };
            if ui.primary(save).clicked() {
                cx.send(Command::SaveThen(*leaving));
            }
            if ui.secondary(discard).clicked() {
                cx.send(Command::Discard(*leaving));
            }
            if ui.secondary("Stay").clicked() || ui.input(|input| input.key_pressed(Key::Escape)) {
                cx.send(Command::CloseBar);
            }
        }
    });
}

fn close_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    ui.add_space(8.0);
    let escaped = ui.input(|input| input.key_pressed(Key::Escape));
    if ui.lesser(true, "Put away", "").on_hover_text("Esc").clicked() || escaped {
        cx.send(Command::CloseBar);
    }
}

fn slot_ui(ui: &mut Ui, cx: &Ctx<'_>, picked: &mut Picked) {
    let label = ui.label(format!("Make “{}” a slot called", picked.word));
    ui.add(TextEdit::singleline(&mut picked.slot).desired_width(150.0).margin(vec2(10.0, 7.0))).labelled_by(label.id);
    let (here, all) = picked.places;
    let make = |only| Command::MakeSlot(only, picked.word.clone(), picked.slot.trim().to_owned());
    let places = |count: usize| if count == 1 { "1 place".to_owned() } else { format!("{count} places") };
    if ui.primary(&format!("Everywhere, {}", places(all))).clicked() {
        cx.send(make(None));
    }
    if here > 0 && here < all && ui.secondary(&format!("In this text only, {}", places(here))).clicked() {
        cx.send(make(Some(picked.anchor.clone())));
    }
    if ui.secondary("Never mind").clicked() || ui.input(|input| input.key_pressed(Key::Escape)) {
        cx.send(Command::CloseBar);
    }
}

fn path_ui(ui: &mut Ui, cx: &Ctx<'_>, what: &PathFor, text: &mut String) {
    let label = ui.label(what.title());
    let field = ui
        .add(TextEdit::singleline(text).desired_width(440.0).margin(vec2(10.0, 7.0)).hint_text(match what {
            PathFor::Picture(_) => "a file on this computer",
            PathFor::New | PathFor::SaveAs => "a folder, such as ~/kits/the-night-ferry",
            PathFor::Open | PathFor::Export => "a folder on this computer",
        }))
        .labelled_by(label.id);
    // Asked before the field takes the focus again: then nothing would have been lost.
    let enter = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    if ui.memory(|memory| memory.focused().is_none()) {
        field.request_focus();
    }
    let sent = ui.primary(what.verb()).clicked() || enter;
    if sent && !text.trim().is_empty() {
        cx.send(Command::Path(what.clone(), text.trim().to_owned()));
    }
    if ui.secondary("Never mind").clicked() || ui.input(|input| input.key_pressed(Key::Escape)) {
        cx.send(Command::CloseBar);
    }
}
