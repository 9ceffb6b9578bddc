use eframe::egui::{
    Align, Button, FontFamily, FontId, Layout, Response, RichText, Role, Sense, Stroke, Ui, WidgetInfo, vec2,
};

use crate::app::action::Action;
use crate::app::ctx::{Command, Ctx};
use crate::app::session::Tab;
use crate::app::tokens::{BOLD, SERIF_BOLD};

/// Below this width undo, redo and save are in the menu only.
const NARROW: f32 = 960.0;

/// The header: the kit, the five places, and what is at hand everywhere.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let narrow = ui.available_width() < NARROW;
    ui.horizontal_centered(|ui| {
        name_ui(ui, cx, if narrow { 120.0 } else { 208.0 });
        ui.add_space(if narrow { 4.0 } else { 18.0 });
        for tab in Tab::ALL {
            if tab_ui(ui, cx, tab, if narrow { 10.0 } else { 28.0 }).clicked() {
                cx.send(Command::Do(Action::Show(tab)));
            }
        }
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 6.0;
            let view: [&[Action]; 3] = [
                &[Action::SwitchLight],
                &[Action::ZoomIn, Action::ZoomOut, Action::ZoomReset],
                &[Action::ToggleFindings],
            ];
            menu_ui(ui, cx, "View", &view);
            let kit: [&[Action]; 5] = [
                &[Action::New, Action::Open, Action::Demo(0), Action::Demo(1)],
                &[Action::Save, Action::SaveAs],
                &[Action::Undo, Action::Redo],
                &[Action::Export, Action::WriteBundle],
                &[Action::Quit],
            ];
            menu_ui(ui, cx, "Kit", &kit);
            if narrow {
                return;
            }
            action_ui(ui, cx, Action::Save);
            action_ui(ui, cx, Action::Redo);
            action_ui(ui, cx, Action::Undo);
        });
    });
}

fn name_ui(ui: &mut Ui, cx: &Ctx<'_>, width: f32) {
    let t = cx.tokens;
    ui.vertical(|ui| {
        ui.set_width(width);
        ui.spacing_mut().item_spacing.y = 0.0;
        ui.add_space(9.0);
        let font = FontId::new(19.0, FontFamily::Name(SERIF_BOLD.into()));
        let title = RichText::new(&cx.kit.title).font(font).color(t.ink);
        ui.add(eframe::egui::Label::new(title).truncate()).on_hover_text(cx.doc.place());
        let state = if cx.doc.unsaved() {
            RichText::new("unsaved changes").color(t.warns)
        } else if cx.doc.has_place() {
            RichText::new("saved").color(t.quiet)
        } else {
            RichText::new("the demo kit").color(t.quiet)
        };
        ui.label(state.size(12.5));
    });
}

/// A place: its name, and a line under the one that is shown.
fn tab_ui(ui: &mut Ui, cx: &Ctx<'_>, tab: Tab, pad: f32) -> Response {
    let t = cx.tokens;
    let shown = cx.session.tab == tab;
    let family = if shown { FontFamily::Name(BOLD.into()) } else { FontFamily::Proportional };
    let tone = if shown { t.accent } else { t.ink };
    let words = ui.painter().layout_no_wrap(tab.name().to_owned(), FontId::new(16.0, family), tone);
    // As wide as in bold, so that the others stay where they are when this one is shown.
    let bold = FontId::new(16.0, FontFamily::Name(BOLD.into()));
    let widest = ui.painter().layout_no_wrap(tab.name().to_owned(), bold, tone).size().x;
    let size = vec2(widest.max(40.0) + pad, ui.available_height());
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Tab, true, shown, tab.name()));
    let painter = ui.painter();
    if response.hovered() && !shown {
        painter.rect_filled(rect.shrink2(vec2(2.0, 10.0)), 7, t.hover);
    }
    if response.has_focus() {
        painter.rect_stroke(
            rect.shrink2(vec2(2.0, 10.0)),
            7,
            Stroke::new(2.0, t.accent),
            eframe::egui::StrokeKind::Inside,
        );
    }
    painter.galley(rect.center() - words.size() / 2.0, words, tone);
    if shown {
        let line = eframe::egui::Rect::from_min_max(
            eframe::egui::pos2(rect.left() + 12.0, rect.bottom() - 3.0),
            eframe::egui::pos2(rect.right() - 12.0, rect.bottom()),
        );
        painter.rect_filled(line, 1, t.accent);
    }
    let keys = Action::Show(tab).shortcut().map(|keys| ui.ctx().format_shortcut(&keys)).unwrap_or_default();
    response.on_hover_text(format!("{}   {keys}", tab.about()))
}

/// A button for an action.
fn action_ui(ui: &mut Ui, cx: &Ctx<'_>, action: Action) {
    let keys = action.shortcut().map(|keys| ui.ctx().format_shortcut(&keys)).unwrap_or_default();
    let response = ui
        .add_enabled(enabled(cx, action), Button::new(action.text()).frame_when_inactive(false))
        .on_hover_text(format!("{}   {keys}", action.tooltip()));
    if response.clicked() {
        cx.send(Command::Do(action));
    }
}

/// A menu: actions in groups, each with its keys.
fn menu_ui(ui: &mut Ui, cx: &Ctx<'_>, name: &str, groups: &[&[Action]]) {
    ui.menu_button(name, |ui| {
        ui.set_min_width(240.0);
        ui.spacing_mut().item_spacing.y = 2.0;
        for (at, group) in groups.iter().enumerate() {
            if at > 0 {
                ui.separator();
            }
            for action in *group {
                let keys = action.shortcut().map(|keys| ui.ctx().format_shortcut(&keys)).unwrap_or_default();
                let button = Button::new(action.text());
                // An empty shortcut would leave a blank at the end of the name that is read aloud.
                let button = if keys.is_empty() { button } else { button.shortcut_text(keys) };
                if ui.add_enabled(enabled(cx, *action), button).on_hover_text(action.tooltip()).clicked() {
                    cx.send(Command::Do(*action));
                    ui.close();
                }
            }
        }
    });
}

/// Whether there is anything for an action to do.
fn enabled(cx: &Ctx<'_>, action: Action) -> bool {
    match action {
        Action::Undo => cx.history.can_undo(),
        Action::Redo => cx.history.can_redo(),
        Action::Save => cx.doc.unsaved() || !cx.doc.has_place(),
        _ => true,
    }
}
