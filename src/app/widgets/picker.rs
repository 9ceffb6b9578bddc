//! A colour, chosen by eye: a field of strength and lightness, and a strip of hues.

use eframe::egui::ecolor::Hsva;
use eframe::egui::{
    Color32, CornerRadius, Id, Mesh, Popup, PopupCloseBehavior, Pos2, Rect, Response, Role, Sense, Shape, Stroke,
    StrokeKind, Ui, WidgetInfo, lerp, pos2, remap_clamp, vec2,
};

/// Size of the button.
const BUTTON: [f32; 2] = [36.0, 24.0];
/// Side of the field, and height of the strip.
const FIELD: f32 = 240.0;
const STRIP: f32 = 22.0;
/// Steps in which a gradient is painted: the hues turn six times, and each step is blended.
const STEPS: u32 = 24;

/// A button that shows a colour and opens the field. Changes `rgb` while something is dragged.
pub fn colour_button(ui: &mut Ui, rgb: &mut [u8; 3]) -> Response {
    let (rect, mut button) = ui.allocate_exact_size(vec2(BUTTON[0], BUTTON[1]), Sense::click());
    button.widget_info(|| WidgetInfo::new(Role::Button));
    let [r, g, b] = *rgb;
    let visuals = ui.style().interact(&button);
    let edge = if button.has_focus() { ui.visuals().selection.stroke } else { visuals.bg_stroke };
    ui.painter().rect(rect, CornerRadius::same(5), Color32::from_rgb(r, g, b), edge, StrokeKind::Inside);
    let id = button.id.with("hsv");
    let shown = Popup::from_toggle_button_response(&button)
        .close_behavior(PopupCloseBehavior::CloseOnClickOutside)
        .show(|ui| field_ui(ui, id, rgb));
    if shown.is_some_and(|shown| shown.inner) {
        button.mark_changed();
    }
    button
}

/// The field and the strip. Answers whether the colour is another now.
fn field_ui(ui: &mut Ui, id: Id, rgb: &mut [u8; 3]) -> bool {
    // Grey has no hue: what was chosen last is kept beside the colour.
    let kept = ui.data(|data| data.get_temp::<(Hsva, [u8; 3])>(id)).filter(|(_, of)| of == rgb);
    let mut hsv = kept.map_or_else(|| Hsva::from_srgb(*rgb), |(hsv, _)| hsv);
    let before = hsv;
    let (field, drag) = ui.allocate_exact_size(vec2(FIELD, FIELD), Sense::click_and_drag());
    let hue = hsv.h;
    let shade = |s: f32, v: f32| Color32::from(Hsva::new(hue, s, v, 1.0));
    gradient(ui, field, (STEPS, STEPS), &|x, y| shade(x, 1.0 - y));
    if let Some(at) = drag.interact_pointer_pos() {
        hsv.s = remap_clamp(at.x, field.x_range(), 0.0..=1.0);
        hsv.v = remap_clamp(at.y, field.y_range(), 1.0..=0.0);
    }
    let at = pos2(lerp(field.x_range(), hsv.s), lerp(field.bottom()..=field.top(), hsv.v));
    let rim = if hsv.v > 0.6 { Color32::BLACK } else { Color32::WHITE };
    ui.painter().circle(at, 7.0, Color32::from(hsv), Stroke::new(2.0, rim));
    ui.add_space(6.0);
    let (strip, drag) = ui.allocate_exact_size(vec2(FIELD, STRIP), Sense::click_and_drag());
    gradient(ui, strip, (STEPS, 1), &|x, _| Color32::from(Hsva::new(x, 1.0, 1.0, 1.0)));
    if let Some(at) = drag.interact_pointer_pos() {
        // The last hue is the first again, and would jump to the other end.
        hsv.h = remap_clamp(at.x, strip.x_range(), 0.0..=0.999);
    }
    let x = lerp(strip.x_range(), hsv.h);
    let mark = Rect::from_center_size(pos2(x, strip.center().y), vec2(7.0, STRIP));
    ui.painter().rect_stroke(mark, CornerRadius::same(2), Stroke::new(2.0, Color32::BLACK), StrokeKind::Inside);
    if hsv == before {
        return false;
    }
    let fresh = hsv.to_srgb();
    ui.data_mut(|data| data.insert_temp(id, (hsv, fresh)));
    let changed = fresh != *rgb;
    *rgb = fresh;
    changed
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
