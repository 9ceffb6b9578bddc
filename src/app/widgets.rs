//! The house widgets: headings, labelled fields, buttons, chips.

mod field;
mod mark;
mod picked;
mod picker;

use eframe::egui::{
    Align, Button, FontFamily, FontId, Frame, Layout, Margin, Response, RichText, Stroke, Ui, UiBuilder, vec2,
};

pub use field::{Field, found_ui};
pub use mark::{Mark, mark_ui, paint_mark};
pub use picker::colour_button;

use crate::app::tokens::{self, BOLD, GAP, GAP_L, GAP_M, GAP_S, SERIF_BOLD, Tokens};
use crate::diag::Trouble;

/// The ring about what has the keyboard, where the thing itself does not show it.
pub fn focus_ring(ui: &Ui, rect: eframe::egui::Rect) {
    let pen = Stroke::new(2.0, ui.tokens().accent);
    ui.painter().rect_stroke(rect.expand(2.0), tokens::RADIUS + 2, pen, eframe::egui::StrokeKind::Outside);
}

/// Frames within which a key that was pressed has moved the focus.
const MOVED: u64 = 2;

/// Whether the focus is on the move by a key; a click must not move what is clicked on from under the pointer.
fn by_key(ui: &Ui) -> bool {
    use eframe::egui::Key;
    const KEYS: [Key; 5] = [Key::Tab, Key::ArrowUp, Key::ArrowDown, Key::ArrowLeft, Key::ArrowRight];
    let (kept, now) = (eframe::egui::Id::unique("focus on the move"), ui.ctx().cumulative_frame_nr());
    if ui.input(|input| KEYS.iter().any(|key| input.key_pressed(*key))) {
        ui.data_mut(|data| data.insert_temp(kept, now));
    }
    ui.data(|data| data.get_temp::<u64>(kept)).is_some_and(|at| now.saturating_sub(at) <= MOVED)
}

/// Scrolls to what the keyboard has gone to, if that is out of sight in this scrolled list, whose rows fill `rows`. The
/// toolkit moves the focus only.
pub fn follow_focus(ui: &Ui, rows: eframe::egui::Rect) {
    let by_key = by_key(ui);
    let now = ui.memory(|memory| memory.focused());
    let kept = ui.scope_id().with("followed");
    let before = ui.data(|data| data.get_temp::<eframe::egui::Id>(kept));
    let Some(id) = now.filter(|_| now != before) else {
        if now.is_none() {
            ui.data_mut(|data| data.remove::<eframe::egui::Id>(kept));
        }
        return;
    };
    ui.data_mut(|data| data.insert_temp(kept, id));
    if !by_key {
        return;
    }
    // A menu lies above the list and is not part of it.
    let here = ui.ctx().read_response(id).filter(|response| response.layer_id == ui.layer_id());
    if let Some(response) = here.filter(|response| rows.contains(response.rect.center())) {
        ui.scroll_to_rect(response.rect.expand2(vec2(0.0, GAP_L)), None);
    }
}

/// House widgets, as methods of the toolkit's `Ui`.
pub trait UiExt {
    /// The colours in force.
    fn tokens(&self) -> &'static Tokens;
    /// The heading of what is in hand.
    fn title(&mut self, text: &str) -> Response;
    /// A sentence or two under the heading.
    fn lede(&mut self, text: &str) -> Response;
    /// The heading of a group of fields.
    fn section(&mut self, text: &str) -> Response;
    /// Small text that explains.
    fn quiet(&mut self, text: &str) -> Response;
    /// Small text in bold.
    fn strong_small(&mut self, text: &str) -> Response;
    /// The one thing to do next.
    fn primary(&mut self, text: &str) -> Response;
    /// A thing that can be done.
    fn secondary(&mut self, text: &str) -> Response;
    /// A lesser thing that can be done, beside others.
    fn lesser(&mut self, enabled: bool, text: &str, name: &str) -> Response;
    /// A word with a mark on a soft ground.
    fn chip(&mut self, mark: Mark, text: &str) -> Response;
    /// A group on a ground of its own.
    fn group_card<R>(&mut self, add: impl FnOnce(&mut Ui) -> R) -> R;
    /// A trouble, with its hints.
    fn trouble(&mut self, trouble: &Trouble);
    /// Begins a new row of a wrapped layout where something of this width would else run over the edge: a group of
    /// things does not wrap by itself.
    fn make_room(&mut self, width: f32);
    /// The column in which fields stand, scrolled.
    fn column(&mut self, salt: &str, add: impl FnOnce(&mut Ui));
}

impl UiExt for Ui {
    fn tokens(&self) -> &'static Tokens {
        Tokens::of(if self.visuals().dark_mode { eframe::egui::Theme::Dark } else { eframe::egui::Theme::Light })
    }

    fn title(&mut self, text: &str) -> Response {
        let shown = if text.trim().is_empty() { "Untitled" } else { text };
        self.heading(RichText::new(shown).color(self.tokens().ink))
    }

    fn lede(&mut self, text: &str) -> Response {
        let response = self.label(RichText::new(text).color(self.tokens().quiet));
        self.add_space(GAP);
        response
    }

    fn section(&mut self, text: &str) -> Response {
        self.add_space(GAP_L - GAP);
        let font = FontId::new(19.0, FontFamily::Name(SERIF_BOLD.into()));
        let response = self.label(RichText::new(text).font(font).color(self.tokens().ink));
        let width = self.available_width();
        let (rect, _) = self.allocate_exact_size(vec2(width, 1.0), eframe::egui::Sense::hover());
        self.painter().hline(rect.x_range(), rect.center().y, Stroke::new(1.0, self.tokens().line));
        self.add_space(GAP_S);
        response
    }

    fn quiet(&mut self, text: &str) -> Response {
        self.label(RichText::new(text).size(13.0).color(self.tokens().quiet))
    }

    fn strong_small(&mut self, text: &str) -> Response {
        self.label(RichText::new(text).font(FontId::new(13.5, FontFamily::Name(BOLD.into()))))
    }

    fn primary(&mut self, text: &str) -> Response {
        let t = self.tokens();
        let font = FontId::new(14.5, FontFamily::Name(BOLD.into()));
        let text = RichText::new(text).font(font).color(t.on_accent);
        let response = self.add(Button::new(text).fill(t.accent).stroke(Stroke::NONE));
        if response.has_focus() {
            focus_ring(self, response.rect);
        }
        response
    }

    fn secondary(&mut self, text: &str) -> Response {
        self.add(Button::new(text))
    }

    fn lesser(&mut self, enabled: bool, text: &str, name: &str) -> Response {
        const PADDING: f32 = 9.0;
        if self.layout().main_wrap {
            let words = self.painter().layout_no_wrap(text.to_owned(), FontId::proportional(13.0), self.tokens().ink);
            self.make_room(words.size().x + 2.0 * PADDING);
        }
        self.scope(|ui| {
            ui.spacing_mut().button_padding = vec2(PADDING, 3.0);
            ui.spacing_mut().interact_size.y = 24.0;
            let response = ui.add_enabled(enabled, Button::new(RichText::new(text).size(13.0)));
            if name.is_empty() { response } else { response.accessible_name(name) }
        })
        .inner
    }

    fn chip(&mut self, mark: Mark, text: &str) -> Response {
        let (tone, ground) = mark.colours(self.tokens());
        Frame::new()
            .fill(ground)
            .corner_radius(11)
            .inner_margin(Margin { left: 8, right: 10, top: 3, bottom: 3 })
            .show(self, |ui| {
                // Before the row is begun: it is as high as a control.
                ui.spacing_mut().interact_size.y = 16.0;
                ui.horizontal(|ui| {
                    ui.spacing_mut().item_spacing.x = 6.0;
                    mark_ui(ui, mark, 12.0);
                    ui.label(RichText::new(text).size(13.0).color(tone));
                });
            })
            .response
    }

    fn group_card<R>(&mut self, add: impl FnOnce(&mut Ui) -> R) -> R {
        let t = self.tokens();
        Frame::new()
            .fill(t.shelf)
            .stroke(Stroke::new(1.0, t.line))
            .corner_radius(tokens::RADIUS)
            .inner_margin(Margin::same(16))
            .show(self, |ui| {
                ui.set_width(ui.available_width());
                add(ui)
            })
            .inner
    }

    fn trouble(&mut self, trouble: &Trouble) {
        let t = self.tokens();
        Frame::new().fill(t.blocks_soft).corner_radius(tokens::RADIUS).inner_margin(Margin::symmetric(12, 9)).show(
            self,
            |ui| {
                ui.set_width(ui.available_width());
                let head = match &trouble.place {
                    Some(place) => format!("{place}: {}", trouble.message),
                    None => trouble.message.clone(),
                };
                ui.label(RichText::new(head).color(t.blocks));
                for hint in &trouble.hints {
                    ui.label(RichText::new(hint).size(13.5).color(t.ink));
                }
            },
        );
    }

    fn make_room(&mut self, width: f32) {
        if self.layout().main_wrap && self.available_size_before_wrap().x < width {
            self.end_row();
        }
    }

    fn column(&mut self, salt: &str, add: impl FnOnce(&mut Ui)) {
        eframe::egui::ScrollArea::vertical().id_salt(salt).auto_shrink([false, false]).show(self, |ui| {
            let room = ui.available_width();
            let width = (room - 2.0 * GAP_M - 12.0).clamp(240.0, tokens::COLUMN);
            let left = ((room - width) / 2.0).clamp(GAP_M, 56.0);
            let mut rect = ui.available_rect_before_wrap();
            rect.min.x += left;
            rect.set_width(width);
            let mut child = ui.new_child(UiBuilder::new().max_rect(rect).layout(Layout::top_down(Align::Min)));
            child.add_space(GAP_M + GAP_S);
            add(&mut child);
            child.add_space(GAP_L);
            let used = child.min_rect();
            follow_focus(ui, used);
            ui.allocate_rect(used, eframe::egui::Sense::hover());
        });
    }
}
