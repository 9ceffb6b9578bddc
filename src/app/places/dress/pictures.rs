use std::collections::BTreeMap;
use std::sync::Arc;

use eframe::egui::load::SizedTexture;
use eframe::egui::{
    Align, Color32, ColorImage, Image, Layout, Sense, TextEdit, TextureHandle, TextureOptions, Ui, Vec2, vec2,
};

use super::begin_ui;
use crate::app::ctx::{Command, Ctx};
use crate::app::places::Locals;
use crate::app::widgets::UiExt as _;
use crate::face::clean_svg;
use crate::print::picture;
use crate::redress::symbols_used;
use crate::theme::{FRAMES, FrameInfo, MORE_FRAMES, Palette, PictureKind, ThemeEdit, usual_size};

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
    let used = symbols_used(cx.kit, theme);
    for kind in PictureKind::ALL {
        ui.section(match kind {
            PictureKind::Frame => "Frames",
            PictureKind::Ornament => "Ornaments",
            PictureKind::Symbol => "Symbols",
        });
        for (name, path) in kind.of(theme) {
            let about = FRAMES.iter().chain(MORE_FRAMES).find(|info| kind == PictureKind::Frame && info.name == name);
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
                    if let Some(needs) = needs(kind, name, about) {
                        ui.quiet(&needs);
                    }
                });
                ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                    let words = format!("Replace the {} {name}", kind.word());
                    if own && ui.lesser(true, "Replace…", &words).clicked() {
                        cx.send(Command::Replace(kind, name.clone()));
                    }
                    if own && kind == PictureKind::Symbol {
                        symbol_ui(ui, cx, &mut locals.renaming, name, used.contains(name));
                    } else if own && MORE_FRAMES.iter().any(|info| kind == PictureKind::Frame && info.name == name) {
                        remove_ui(ui, cx, kind, name, true);
                    }
                });
            });
            if kind == PictureKind::Symbol && own {
                rename_ui(ui, cx, &mut locals.renaming, name);
            }
        }
        if own {
            add_ui(ui, cx, kind, &mut locals.new_symbol);
        }
    }
    if budget == 0 {
        ui.ctx().request_repaint();
    }
}

/// What a picture must have, in words: its size and its slots.
fn needs(kind: PictureKind, name: &str, info: Option<&FrameInfo>) -> Option<String> {
    let size = usual_size(name).filter(|_| kind != PictureKind::Symbol);
    let size = size.map(|size| format!("{} × {} mm", size.w.get(), size.h.get()));
    let slots = info.filter(|info| !info.slots.is_empty()).map(|info| format!("slots: {}", info.slots.join(", ")));
    let all: Vec<String> = size.into_iter().chain(slots).collect();
    (!all.is_empty()).then(|| all.join("; "))
}

/// What can be done with a symbol beside replacing it.
fn symbol_ui(ui: &mut Ui, cx: &Ctx<'_>, renaming: &mut Option<(String, String)>, name: &str, used: bool) {
    remove_ui(ui, cx, PictureKind::Symbol, name, !used);
    if ui.lesser(true, "Rename…", &format!("Rename the symbol {name}")).clicked() {
        *renaming = Some((name.to_owned(), name.to_owned()));
    }
}

fn remove_ui(ui: &mut Ui, cx: &Ctx<'_>, kind: PictureKind, name: &str, free: bool) {
    let button = ui.lesser(free, "Remove", &format!("Remove the {} {name}", kind.word()));
    let button = button.on_disabled_hover_text("This kit uses it: give its puzzles and locks another first");
    if button.clicked() {
        cx.send(Command::ThemeStep(vec![ThemeEdit::Picture(kind, name.to_owned(), None)]));
    }
}

/// The field for the new name of a symbol, below it.
fn rename_ui(ui: &mut Ui, cx: &Ctx<'_>, renaming: &mut Option<(String, String)>, name: &str) {
    let Some((_, text)) = renaming.as_mut().filter(|(old, _)| old == name) else { return };
    let mut done = false;
    ui.horizontal(|ui| {
        ui.add_space(SIDE);
        let label = ui.strong_small("New name");
        ui.add(TextEdit::singleline(text).desired_width(180.0).margin(vec2(10.0, 7.0))).labelled_by(label.id);
        let new = symbol_name(text);
        let ready = !new.is_empty() && !cx.doc.theme.theme.symbols.contains_key(&new);
        if ui.lesser(ready, "Rename it", &format!("Rename {name} so")).clicked() {
            cx.send(Command::RenameSymbol(name.to_owned(), new));
            done = true;
        }
        done |= ui.lesser(true, "Never mind", "Keep the name").clicked();
    });
    ui.quiet("Puzzles and locks of this kit follow; texts that say the old name are listed under Leftovers.");
    if done {
        *renaming = None;
    }
}

/// What a symbol may be called: guests read it.
fn symbol_name(text: &str) -> String {
    text.trim().to_lowercase().chars().filter(|c| c.is_alphanumeric() || matches!(c, ' ' | '-')).collect()
}

/// What the theme can have besides: a new symbol, frames that it does not draw.
fn add_ui(ui: &mut Ui, cx: &Ctx<'_>, kind: PictureKind, new: &mut String) {
    let theme = &cx.doc.theme.theme;
    match kind {
        PictureKind::Symbol => {
            ui.horizontal(|ui| {
                let label = ui.strong_small("New symbol");
                ui.add(TextEdit::singleline(new).desired_width(180.0).margin(vec2(10.0, 7.0))).labelled_by(label.id);
                let name = symbol_name(new);
                let ready = !name.is_empty() && !theme.symbols.contains_key(&name);
                if ui.lesser(ready, "Choose its picture…", "Choose the picture of the new symbol").clicked() {
                    cx.send(Command::Replace(kind, name));
                    new.clear();
                }
            });
            ui.quiet("24 mm square. Guests may read the name: a plain word for what is drawn.");
        }
        PictureKind::Frame => {
            for info in MORE_FRAMES.iter().filter(|info| !theme.frames.contains_key(info.name)) {
                ui.horizontal(|ui| {
                    ui.strong_small(info.name);
                    ui.quiet(&format!(
                        "{}; slots: {}; not drawn, a border stands in",
                        info.about,
                        info.slots.join(", ")
                    ));
                    if ui.lesser(true, "Add…", &format!("Add the frame {}", info.name)).clicked() {
                        cx.send(Command::Replace(kind, info.name.to_owned()));
                    }
                });
            }
        }
        PictureKind::Ornament => {}
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
