//! A colour, chosen by eye: a field of strength and lightness, and a strip of hues; by pointer or by the arrow keys.

use eframe::egui::accesskit::Role as Heard;
use eframe::egui::ecolor::Hsva;
use eframe::egui::{
    Color32, CornerRadius, EventFilter, Id, Key, Mesh, Modifiers, Popup, PopupCloseBehavior, Pos2, Rect, Response,
    Role, Sense, Shape, Stroke, StrokeKind, Ui, Vec2, WidgetInfo, lerp, pos2, remap_clamp, vec2,
};

use crate::app::widgets::focus_ring;

/// Size of the button.
const BUTTON: [f32; 2] = [36.0, 24.0];
/// Side of the field, and height of the strip.
const FIELD: f32 = 240.0;
const STRIP: f32 = 22.0;
/// Steps in which a gradient is painted: the hues turn six times, and each step is blended.
const STEPS: u32 = 24;
/// What one press of an arrow key goes, as a share of the whole, and with Shift.
const PRESS: (f32, f32) = (0.01, 0.1);
/// The last hue is the first again, and would jump to the other end.
const LAST_HUE: f32 = 0.999;

/// A button that shows a colour and opens the field; `name` says of what. Changes `rgb` while something is dragged or
/// an arrow key is down.
pub fn colour_button(ui: &mut Ui, name: &str, rgb: &mut [u8; 3]) -> Response {
    let (rect, mut button) = ui.allocate_exact_size(vec2(BUTTON[0], BUTTON[1]), Sense::click());
    button.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Colour of {name}")));
    let [r, g, b] = *rgb;
    let visuals = ui.style().interact(&button);
    let edge = if button.has_focus() { ui.visuals().selection.stroke } else { visuals.bg_stroke };
    ui.painter().rect(rect, CornerRadius::same(5), Color32::from_rgb(r, g, b), edge, StrokeKind::Inside);
    if button.has_focus() {
        focus_ring(ui, rect);
    }
    let id = button.id.with("hsv");
    let (field, strip) = (id.with("field"), id.with("strip"));
    let held = ui.memory(|memory| memory.has_focus(field) || memory.has_focus(strip));
    let shown = Popup::from_toggle_button_response(&button)
        .close_behavior(PopupCloseBehavior::CloseOnClickOutside)
        .show(|ui| field_ui(ui, id, (field, strip), name, rgb));
    match shown {
        Some(shown) => {
            // Opened by pointer or by key: the arrow keys serve at once.
            if button.clicked() {
                ui.memory_mut(|memory| memory.request_focus(field));
            }
            if shown.inner {
                button.mark_changed();
            }
        }
        // Escape has closed it: the keyboard goes back to where it came from.
        None if held => button.request_focus(),
        None => {}
    }
    button
}

/// The field and the strip. Answers whether the colour is another now.
fn field_ui(ui: &mut Ui, id: Id, (field_id, strip_id): (Id, Id), name: &str, rgb: &mut [u8; 3]) -> bool {
    // Grey has no hue: what was chosen last is kept beside the colour.
    let kept = ui.data(|data| data.get_temp::<(Hsva, [u8; 3])>(id)).filter(|(_, of)| of == rgb);
    let mut hsv = kept.map_or_else(|| Hsva::from_srgb(*rgb), |(hsv, _)| hsv);
    let before = hsv;
    let (_, field) = ui.allocate_space(Vec2::splat(FIELD));
    let square = ui.interact(field, field_id, Sense::click_and_drag());
    let hue = hsv.h;
    let shade = |s: f32, v: f32| Color32::from(Hsva::new(hue, s, v, 1.0));
    gradient(ui, field, (STEPS, STEPS), &|x, y| shade(x, 1.0 - y));
    if let Some(at) = square.interact_pointer_pos() {
        hsv.s = remap_clamp(at.x, field.x_range(), 0.0..=1.0);
        hsv.v = remap_clamp(at.y, field.y_range(), 1.0..=0.0);
    }
    let pressed = arrows(ui, &square);
    hsv.s = (hsv.s + pressed.x).clamp(0.0, 1.0);
    hsv.v = (hsv.v - pressed.y).clamp(0.0, 1.0);
    let at = pos2(lerp(field.x_range(), hsv.s), lerp(field.bottom()..=field.top(), hsv.v));
    let rim = if hsv.v > 0.6 { Color32::BLACK } else { Color32::WHITE };
    ui.painter().circle(at, 7.0, Color32::from(hsv), Stroke::new(2.0, rim));
    let value = format!("strength {:.0} %, lightness {:.0} %", hsv.s * 100.0, hsv.v * 100.0);
    heard(ui, &square, &format!("Strength and lightness of {name}"), (f64::from(hsv.s) * 100.0, 100.0), value);
    ui.add_space(6.0);
    let (_, strip) = ui.allocate_space(vec2(FIELD, STRIP));
    let drag = ui.interact(strip, strip_id, Sense::click_and_drag());
    gradient(ui, strip, (STEPS, 1), &|x, _| Color32::from(Hsva::new(x, 1.0, 1.0, 1.0)));
    if let Some(at) = drag.interact_pointer_pos() {
        hsv.h = remap_clamp(at.x, strip.x_range(), 0.0..=LAST_HUE);
    }
    let pressed = arrows(ui, &drag);
    hsv.h = (hsv.h + pressed.x - pressed.y).clamp(0.0, LAST_HUE);
    let x = lerp(strip.x_range(), hsv.h);
    let mark = Rect::from_center_size(pos2(x, strip.center().y), vec2(7.0, STRIP));
    ui.painter().rect_stroke(mark, CornerRadius::same(2), Stroke::new(2.0, Color32::BLACK), StrokeKind::Inside);
    let turn = f64::from(hsv.h) * 360.0;
    heard(ui, &drag, &format!("Hue of {name}"), (turn, 360.0), format!("{turn:.0} degrees"));
    for control in [&square, &drag].into_iter().filter(|control| control.has_focus()) {
        focus_ring(ui, control.rect);
    }
    ui.label(eframe::egui::RichText::new("Arrow keys move it; with Shift by more.").size(12.5));
    if hsv == before {
        return false;
    }
    let fresh = hsv.to_srgb();
    ui.data_mut(|data| data.insert_temp(id, (hsv, fresh)));
    let changed = fresh != *rgb;
    *rgb = fresh;
    changed
}

/// How far the arrow keys have moved a control that has the keyboard, as shares of the whole, to the right and down. A
/// click gives it the keyboard; while it has it, the arrows and Escape are its own.
fn arrows(ui: &Ui, control: &Response) -> Vec2 {
    if control.clicked() || control.drag_started() {
        control.request_focus();
    }
    if !control.has_focus() {
        return Vec2::ZERO;
    }
    let filter = EventFilter { tab: false, horizontal_arrows: true, vertical_arrows: true, escape: true };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(control.id, filter));
    let mut moved = Vec2::ZERO;
    ui.input_mut(|input| {
        for (modifiers, step) in [(Modifiers::SHIFT, PRESS.1), (Modifiers::NONE, PRESS.0)] {
            for (key, way) in [
                (Key::ArrowLeft, vec2(-1.0, 0.0)),
                (Key::ArrowRight, vec2(1.0, 0.0)),
                (Key::ArrowUp, vec2(0.0, -1.0)),
                (Key::ArrowDown, vec2(0.0, 1.0)),
            ] {
                #[expect(clippy::cast_precision_loss, reason = "presses within one frame")]
                let times = input.count_and_consume_key(modifiers, key) as f32;
                moved += way * step * times;
            }
        }
    });
    moved
}

/// What a screen reader hears of a control: its name, and its value as a number and in words.
fn heard(ui: &Ui, control: &Response, name: &str, (value, most): (f64, f64), words: String) {
    control.widget_info(|| WidgetInfo::slider(true, value, name));
    ui.ctx().accesskit_node_builder(control.id, |node| {
        node.set_role(Heard::Slider);
        node.set_min_numeric_value(0.0);
        node.set_max_numeric_value(most);
        node.set_value(words);
    });
}

/// Paints a rectangle with the colour of each place, from 0 to 1 across and down.
fn gradient(ui: &Ui, rect: Rect, (across, down): (u32, u32), colour: &dyn Fn(f32, f32) -> Color32) {
    let mut mesh = Mesh::default();
    #[expect(clippy::cast_precision_loss, reason = "a few steps")]
    let share = |step: u32, of: u32| step as f32 / of as f32;
    for row in 0..=down {
        for col in 0..=across {
            let (x, y) = (share(col, across), share(row, down));
            let at: Pos2 = pos2(lerp(rect.x_range(), x), lerp(rect.y_range(), y));
            mesh.colored_vertex(at, colour(x, y));
            if row < down && col < across {
                let first = row * (across + 1) + col;
                let below = first + across + 1;
                mesh.add_triangle(first, first + 1, below);
                mesh.add_triangle(first + 1, below, below + 1);
            }
        }
    }
    ui.painter().add(Shape::mesh(mesh));
}
