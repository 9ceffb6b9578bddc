use std::collections::BTreeMap;
use std::sync::Arc;

use eframe::egui::load::SizedTexture;
use eframe::egui::{Align, Color32, ColorImage, Image, Layout, Sense, TextureHandle, TextureOptions, Ui, Vec2, vec2};

use super::begin_ui;
use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::widgets::UiExt as _;
use crate::face::clean_svg;
use crate::print::picture;
use crate::theme::{FRAMES, Palette, PictureKind};

/// Longest side of a picture in the list, in points.
const SIDE: f32 = 56.0;
/// Pixels to the point at which it is drawn.
const FINE: f32 = 2.0;
/// Pictures drawn in one frame, so that the list fills without halting the window.
const AT_ONCE: usize = 2;

/// Small pictures of a theme's art, as long as art and palette stay.
#[derive(Default)]
pub struct Thumbs {
    made: BTreeMap<String, (Arc<str>, Palette, Option<TextureHandle>)>,
}

impl std::fmt::Debug for Thumbs {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} pictures", self.made.len())
    }
}

/// The pictures of the theme, each to be replaced.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals) {
    ui.title("Pictures");
    ui.lede(
        "Plain SVG at true size in millimetres, from any drawing program. Frames have rectangles named slot-… for their \
         words; what has a class such as f-ink or s-accent follows the palette.",
    );
    let own = cx.doc.own_theme();
    if !own {
        begin_ui(ui, cx);
    }
    for trouble in &cx.doc.theme.missing {
        ui.trouble(trouble);
    }
    let theme = &cx.doc.theme.theme;
    let Ok(palette) = Palette::new(&theme.palette, &cx.kit.look.palette) else { return };
    let mut budget = AT_ONCE;
    for kind in PictureKind::ALL {
        ui.section(match kind {
            PictureKind::Frame => "Frames",
            PictureKind::Ornament => "Ornaments",
            PictureKind::Symbol => "Symbols",
        });
        for (name, path) in kind.of(theme) {
            let about = FRAMES.iter().find(|info| kind == PictureKind::Frame && info.name == name);
            ui.horizontal(|ui| {
                if let Some(svg) = cx.doc.theme.art.get(path) {
                    let key = format!("{}/{name}", kind.word());
                    thumb_ui(ui, &mut locals.thumbs, &key, (svg, &palette), &mut budget);
                } else {
                    ui.allocate_space(Vec2::splat(SIDE));
                }
                ui.vertical(|ui| {
                    ui.spacing_mut().item_spacing.y = 1.0;
                    ui.add_space(10.0);
                    ui.strong_small(name);
                    ui.quiet(&match about {
                        Some(info) => format!("{}; {path}", info.about),
                        None => path.to_string(),
                    });
                });
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let words = format!("Replace the {} {name}", kind.word());
                    if own && ui.lesser(true, "Replace…", &words).clicked() {
                        cx.send(Command::Replace(kind, name.clone()));
                    }
                });
            });
        }
    }
    if budget == 0 {
        ui.ctx().request_repaint();
    }
}

/// A picture of the list. It is drawn when it comes in sight, as long as the frame's budget lasts.
fn thumb_ui(ui: &mut Ui, thumbs: &mut Thumbs, key: &str, (svg, palette): (&Arc<str>, &Palette), budget: &mut usize) {
    let (rect, _) = ui.allocate_exact_size(Vec2::splat(SIDE), Sense::hover());
    if !ui.is_rect_visible(rect) {
        return;
    }
    ui.painter().rect_filled(rect, 3, Color32::WHITE);
    let stale = thumbs.made.get(key).is_none_or(|(of, looks, _)| !Arc::ptr_eq(of, svg) || looks != palette);
    if stale && *budget > 0 {
        *budget -= 1;
        let drawn = clean_svg(svg, palette).and_then(|clean| {
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a hundred pixels")]
            let side = (SIDE * FINE) as u32;
            picture(&clean, side)
        });
        let texture = drawn.ok().map(|raster| {
            let size = [raster.width as usize, raster.height as usize];
            let image = ColorImage::from_rgba_unmultiplied(size, &raster.rgba);
            ui.ctx().load_texture(format!("thumb/{key}"), image, TextureOptions::LINEAR)
        });
        thumbs.made.insert(key.to_owned(), (svg.clone(), palette.clone(), texture));
    }
    if let Some((_, _, Some(texture))) = thumbs.made.get(key) {
        let [w, h] = texture.size();
        #[expect(clippy::cast_precision_loss, reason = "a hundred pixels")]
        let size = vec2(w as f32, h as f32) / FINE;
        let place = eframe::egui::Rect::from_center_size(rect.center(), size * (SIDE - 6.0) / SIDE);
        Image::new(SizedTexture::new(texture.id(), place.size())).paint_at(ui, place);
    }
}
