use std::hash::Hash;

use eframe::egui::{
    ComboBox, DragValue, FontFamily, FontId, Id, Response, RichText, TextEdit, TextStyle, Ui, emath::Numeric, vec2,
};

use crate::app::ctx::Ctx;
use crate::app::tokens::{GAP_S, SERIF};
use crate::app::widgets::picked::{keep_picked, picked_ui};
use crate::app::widgets::{Mark, UiExt as _, mark_ui};
use crate::checks::Finding;
use crate::diag::Anchor;
use crate::limits;
use crate::script::capital;

/// A field with its name above it and what is found about it below.
///
/// The name is the control's accessible name as well. A field with an anchor takes the keyboard when the
/// author follows a finding to it.
pub struct Field<'a> {
    name: &'a str,
    help: &'a str,
    anchor: Option<Anchor>,
    /// Whether what is found at that place is shown below.
    tells: bool,
    salt: Option<Id>,
    slots: Option<Anchor>,
    wide: bool,
    hint: &'a str,
}

impl<'a> Field<'a> {
    /// A field called `name`.
    #[must_use]
    pub const fn new(name: &'a str) -> Self {
        Self { name, help: "", anchor: None, tells: true, salt: None, slots: None, wide: true, hint: "" }
    }

    /// What belongs into it, in a sentence, shown below the name.
    #[must_use]
    pub const fn help(mut self, help: &'a str) -> Self {
        self.help = help;
        self
    }

    /// What holds while a line is empty, shown faintly in it.
    #[must_use]
    pub const fn hint(mut self, hint: &'a str) -> Self {
        self.hint = hint;
        self
    }

    /// The place in the kit that it edits.
    #[must_use]
    pub fn at(mut self, anchor: Anchor) -> Self {
        self.anchor = Some(anchor);
        self
    }

    /// The place in the kit that it edits, where somebody else shows what is found there.
    #[must_use]
    pub fn goes(mut self, anchor: Anchor) -> Self {
        self.anchor = Some(anchor);
        self.tells = false;
        self
    }

    /// A text of this place in which a picked word can be made a slot. A field of several lines with a place is one
    /// without being asked.
    #[must_use]
    pub fn slots(mut self, anchor: Anchor) -> Self {
        self.slots = Some(anchor);
        self
    }

    /// Tells it from fields of the same name.
    #[must_use]
    pub fn salt(mut self, salt: impl Hash + std::fmt::Debug) -> Self {
        self.salt = Some(Id::unique(salt));
        self
    }

    /// Takes no more width than it needs, so that another stands beside it.
    #[must_use]
    pub const fn narrow(mut self) -> Self {
        self.wide = false;
        self
    }

    /// One line of text; true when it changed.
    pub fn line(self, ui: &mut Ui, cx: &Ctx<'_>, text: &mut String) -> bool {
        let hint = self.hint.to_owned();
        self.show(ui, cx, |ui, id| {
            let edit = TextEdit::singleline(text).id(id).char_limit(limits::TEXT_CHARS).hint_text(hint);
            let response = ui.add(edit.margin(vec2(10.0, 7.0)).desired_width(f32::INFINITY));
            keep_picked(ui, &response, text);
            response
        })
    }

    /// Several lines of text in a book face; true when it changed.
    pub fn text(self, ui: &mut Ui, cx: &Ctx<'_>, rows: usize, text: &mut String) -> bool {
        let mut this = self;
        this.slots = this.slots.or_else(|| this.anchor.clone());
        this.show(ui, cx, |ui, id| {
            let response = ui.add(
                TextEdit::multiline(text)
                    .id(id)
                    .char_limit(limits::TEXT_CHARS)
                    .font(FontId::new(17.0, FontFamily::Name(SERIF.into())))
                    .margin(vec2(12.0, 10.0))
                    .desired_rows(rows)
                    .desired_width(f32::INFINITY),
            );
            keep_picked(ui, &response, text);
            response
        })
    }

    /// Several lines of RON; true when it changed.
    pub fn code(self, ui: &mut Ui, cx: &Ctx<'_>, rows: usize, text: &mut String) -> bool {
        self.show(ui, cx, |ui, id| {
            ui.add(
                TextEdit::multiline(text)
                    .id(id)
                    .char_limit(limits::TEXT_CHARS)
                    .font(TextStyle::Monospace)
                    .margin(vec2(12.0, 10.0))
                    .desired_rows(rows)
                    .desired_width(f32::INFINITY),
            )
        })
    }

    /// One of a list; true when it changed. Each choice has a value and the words shown.
    pub fn pick<T: PartialEq + Clone>(
        self,
        ui: &mut Ui,
        cx: &Ctx<'_>,
        value: &mut T,
        choices: &[(T, String)],
        otherwise: &str,
    ) -> bool {
        let shown = choices.iter().find(|(choice, _)| choice == value).map_or(otherwise, |(_, words)| words.as_str());
        let mut changed = false;
        self.show(ui, cx, |ui, id| {
            ComboBox::from_id_salt(id)
                .width(ui.available_width().min(420.0))
                .selected_text(shown)
                .truncate()
                .show_ui(ui, |ui| {
                    for (choice, words) in choices {
                        if ui.selectable_label(choice == value, words.as_str()).clicked() && choice != value {
                            *value = choice.clone();
                            changed = true;
                        }
                    }
                })
                .response
        });
        changed
    }

    /// A number; true when it changed.
    pub fn number<N: Numeric>(
        self,
        ui: &mut Ui,
        cx: &Ctx<'_>,
        value: &mut N,
        range: std::ops::RangeInclusive<N>,
        unit: &str,
    ) -> bool {
        let suffix = if unit.is_empty() { String::new() } else { format!(" {unit}") };
        let width = ui.available_width().min(110.0);
        self.show(ui, cx, |ui, _| ui.add_sized(vec2(width, 30.0), DragValue::new(value).range(range).suffix(suffix)))
    }

    fn show(self, ui: &mut Ui, cx: &Ctx<'_>, add: impl FnOnce(&mut Ui, Id) -> Response) -> bool {
        let Self { name, help, anchor, tells, salt, slots, wide, hint: _ } = self;
        // Where somebody else tells what is found, the place moves from field to field, and the keyboard must stay.
        let id = ui.make_persistent_id((name, anchor.clone().filter(|_| tells), salt));
        let changed = ui
            .vertical(|ui| {
                ui.spacing_mut().item_spacing.y = GAP_S;
                if wide {
                    ui.set_width(ui.available_width());
                }
                let label = ui.strong_small(name);
                if !help.is_empty() {
                    ui.quiet(help);
                }
                let response = add(ui, id).labelled_by(label.id);
                if let Some(slots) = &slots {
                    picked_ui(ui, cx, &response, slots, label.rect);
                }
                if let Some(anchor) = &anchor {
                    if cx.arrives(anchor) {
                        response.request_focus();
                        response.scroll_to_me(Some(eframe::egui::Align::Center));
                    }
                    if tells {
                        found_ui(ui, cx, anchor);
                    }
                }
                response.changed()
            })
            .inner;
        ui.add_space(GAP_S);
        changed
    }
}

/// What is found at a place, in small lines.
pub fn found_ui(ui: &mut Ui, cx: &Ctx<'_>, anchor: &Anchor) {
    cx.findings_at(anchor).for_each(|finding| finding_ui(ui, cx, finding));
}

/// One finding, in a small line.
fn finding_ui(ui: &mut Ui, cx: &Ctx<'_>, finding: &Finding) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        let mark = Mark::severity(finding.severity);
        mark_ui(ui, mark, 12.0);
        let (tone, _) = mark.colours(cx.tokens);
        ui.label(RichText::new(capital(&finding.message)).size(13.5).color(tone)).on_hover_text(&finding.why);
    });
}
