mod head;

use std::collections::BTreeMap;
use std::sync::Arc;

use eframe::egui::{
    Align, Color32, ColorImage, Image, Layout, Rect, RichText, Role, ScrollArea, Sense, Shadow, Shape, Stroke,
    TextureFilter, TextureHandle, TextureOptions, Ui, Vec2, WidgetInfo, load::SizedTexture, vec2,
};

use crate::app::ctx::Ctx;
use crate::app::preview::{Ground, Item, SPECIMEN, Shown, Wanted, sample_id};
use crate::app::session::Selection;
use crate::app::widgets::{Mark, UiExt as _, mark_ui};
use crate::face::Audience;
use crate::theme::Colour;
use crate::theme::colour::{Eyes, Lens};
use crate::units::Mm;

/// Screen points to the millimetre at which pieces are shown at most: larger than life says nothing more.
const MOST_PT_PER_MM: f32 = 4.6;
/// Height of the words below a picture, about.
const CAPTION: f32 = 44.0;
/// Textures kept beyond those in sight.
const KEPT: usize = 160;

/// The desk: what is in hand, as it will be printed.
#[derive(Default)]
pub struct Desk {
    shown: Option<Shown>,
    textures: BTreeMap<String, (Arc<ColorImage>, Eyes, TextureHandle)>,
    /// Width of a picture in pixels of the screen, in steps, so that a drag of the edge does not draw anew for
    /// every point.
    pub width_px: u32,
    /// The first piece in sight.
    pub first: Option<String>,
}

impl Desk {
    /// Takes in what was drawn. While more is to come, what was there before stays where it is, so that nothing jumps.
    pub fn take(&mut self, mut shown: Shown) {
        if let Some(old) = self.shown.take().filter(|old| !shown.done && old.wanted == shown.wanted) {
            shown.items = over(old.items, shown.items);
        }
        self.shown = Some(shown);
        if self.textures.len() > KEPT {
            self.textures.clear();
        }
    }

    /// Forgets everything: another kit was opened.
    pub fn forget(&mut self) {
        self.shown = None;
        self.textures.clear();
    }

    /// Whether the picture of what is wanted is all there.
    #[must_use]
    pub fn done(&self, wanted: &Wanted, revision: u64) -> bool {
        *wanted == Wanted::Nothing
            || self
                .shown
                .as_ref()
                .is_some_and(|shown| shown.done && shown.wanted == *wanted && shown.revision == revision)
    }

    /// Draws the desk.
    pub fn ui(&mut self, ui: &mut Ui, cx: &Ctx<'_>, wanted: &Wanted) {
        self.first = None;
        // A panel is as wide as what stands in it: without this it would creep shut about small pictures.
        ui.set_min_width(ui.available_width());
        head::ui(ui, cx, wanted, self.done(wanted, cx.doc.revision));
        ui.add_space(6.0);
        let points = ui.available_width() - 24.0;
        let pixels = points * ui.pixels_per_point();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
        let steps = (pixels / 64.0).ceil().clamp(2.0, 60.0) as u32;
        self.width_px = steps * 64;
        if *wanted == Wanted::Nothing {
            about_ui(ui, cx);
            return;
        }
        let Some(shown) = self.shown.clone().filter(|shown| shown.wanted == *wanted) else {
            ui.horizontal(|ui| {
                mark_ui(ui, Mark::Waiting, 14.0);
                ui.quiet("being drawn");
            });
            return;
        };
        if let Selection::Gallery(id) = cx.session.selection(cx.kit) {
            let item = shown.items.iter().find(|item| item.id == sample_id(&id)).or_else(|| shown.items.first());
            ScrollArea::vertical().id_salt("desk, sample").auto_shrink([false, false]).show(ui, |ui| {
                if let Some(item) = item {
                    self.item_ui(ui, cx, item, points);
                }
                shown.troubles.iter().for_each(|trouble| ui.trouble(trouble));
            });
            return;
        }
        ScrollArea::vertical().id_salt(("desk", format!("{wanted:?}"))).auto_shrink([false, false]).show(ui, |ui| {
            for trouble in &shown.troubles {
                ui.trouble(trouble);
            }
            if shown.items.is_empty() && shown.troubles.is_empty() && shown.done {
                let refused = match cx.session.selection(cx.kit) {
                    Selection::Puzzle(id) | Selection::Hints(id) | Selection::Readings(id) => {
                        cx.derived.puzzle(cx.session.level, &id).is_some_and(|laid| laid.laid.is_err())
                    }
                    _ => false,
                };
                ui.quiet(if refused {
                    "The puzzle cannot be arranged as it is; once what blocks is mended, it shows here."
                } else {
                    "Nothing is printed for this."
                });
            }
            let gallery =
                matches!(wanted, Wanted::Pieces(_)) || matches!(cx.session.selection(cx.kit), Selection::Hints(_));
            if matches!(wanted, Wanted::SideBySide(..)) {
                self.pairs_ui(ui, cx, &shown.items);
            } else if gallery {
                self.gallery_ui(ui, cx, &shown.items);
            } else {
                for item in &shown.items {
                    self.item_ui(ui, cx, item, points);
                    ui.add_space(14.0);
                }
            }
        });
    }

    /// The sample of a mechanic, if it is drawn.
    #[must_use]
    pub fn sample(&self, id: &str) -> Option<&Item> {
        let shown = self.shown.as_ref().filter(|shown| matches!(shown.wanted, Wanted::Gallery(_)))?;
        shown.items.iter().find(|item| item.id == sample_id(id))
    }

    /// The sample of a mechanic, as large as the rectangle allows; a blank card while it is being drawn.
    pub fn sample_ui(&mut self, ui: &mut Ui, cx: &Ctx<'_>, id: &str, rect: Rect) {
        match self.sample(id).cloned() {
            Some(item) => {
                #[expect(clippy::cast_possible_truncation, reason = "a size on paper")]
                let paper = vec2(item.size.w.get() as f32, item.size.h.get() as f32);
                let scale = (rect.width() / paper.x.max(1.0)).min(rect.height() / paper.y.max(1.0));
                self.paint(ui, cx, &item, Rect::from_center_size(rect.center(), paper * scale));
            }
            None => {
                ui.painter().rect_filled(rect, 3, cx.tokens.hover);
                crate::app::widgets::paint_mark(
                    ui,
                    Rect::from_center_size(rect.center(), vec2(14.0, 14.0)),
                    Mark::Waiting,
                );
            }
        }
    }

    /// Pairs of pictures, before and after.
    fn pairs_ui(&mut self, ui: &mut Ui, cx: &Ctx<'_>, items: &[Item]) {
        const GAP: f32 = 14.0;
        let width = (ui.available_width() - 24.0 - GAP) / 2.0;
        for pair in items.chunks(2) {
            ui.horizontal_top(|ui| {
                ui.spacing_mut().item_spacing.x = GAP;
                for item in pair {
                    ui.vertical(|ui| {
                        ui.set_width(width);
                        self.item_ui(ui, cx, item, width);
                    });
                }
            });
            ui.add_space(GAP);
        }
    }

    /// Two columns of small pictures; each goes below the shorter column.
    fn gallery_ui(&mut self, ui: &mut Ui, cx: &Ctx<'_>, items: &[Item]) {
        const GAP: f32 = 14.0;
        let width = (ui.available_width() - 24.0 - GAP) / 2.0;
        let mut columns: [(f32, Vec<&Item>); 2] = Default::default();
        for item in items {
            let [left, right] = &mut columns;
            let shorter = if left.0 <= right.0 { left } else { right };
            shorter.0 += shown_size(item, width).y + CAPTION + GAP;
            shorter.1.push(item);
        }
        ui.horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = GAP;
            for (_, items) in columns {
                ui.vertical(|ui| {
                    ui.set_width(width);
                    for item in items {
                        self.item_ui(ui, cx, item, width);
                        ui.add_space(GAP);
                    }
                });
            }
        });
    }

    fn item_ui(&mut self, ui: &mut Ui, cx: &Ctx<'_>, item: &Item, room: f32) {
        let size = shown_size(item, room);
        let (rect, response) = ui.allocate_exact_size(vec2(room, size.y + 4.0), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, format!("{}. {}", item.label, item.alt)));
        if ui.is_rect_visible(rect) {
            self.first.get_or_insert_with(|| item.id.clone());
            let paper = Rect::from_center_size(rect.center(), size);
            self.paint(ui, cx, item, paper);
        }
        caption_ui(ui, cx, item, room);
    }

    fn paint(&mut self, ui: &mut Ui, cx: &Ctx<'_>, item: &Item, paper: Rect) {
        let shadow = Shadow { offset: [0, 3], blur: 12, spread: 0, color: cx.tokens.shadow };
        match item.ground {
            Ground::Rect => {
                ui.painter().add(shadow.as_shape(paper, 1));
                ui.painter().rect_filled(paper, 1, Color32::WHITE);
            }
            Ground::Round => {
                ui.painter().circle_filled(paper.center(), paper.width() / 2.0, Color32::WHITE);
            }
            Ground::Own => {}
        }
        let key = format!("{}/{}", item.id, item.label);
        let fresh = self
            .textures
            .get(&key)
            .is_none_or(|(image, eyes, _)| !Arc::ptr_eq(image, &item.image) || *eyes != cx.session.eyes);
        if fresh {
            // Small pictures of large sheets would else lose their thin lines.
            let options = TextureOptions::LINEAR.with_mipmap_mode(Some(TextureFilter::Linear));
            let eyes = cx.session.eyes;
            let texture = ui.ctx().load_texture(&key, seen(&item.image, eyes), options);
            self.textures.insert(key.clone(), (item.image.clone(), eyes, texture));
        }
        if let Some((_, _, texture)) = self.textures.get(&key) {
            Image::new(SizedTexture::new(texture.id(), paper.size())).paint_at(ui, paper);
        }
        paint_folds(ui, item, paper);
    }
}

/// The folds of a piece, dashed as on its sheet.
#[expect(clippy::cast_possible_truncation, reason = "a size on paper")]
fn paint_folds(ui: &Ui, item: &Item, paper: Rect) {
    const DASH: (f32, f32) = (4.0, 3.0);
    let scale = paper.width() / (item.size.w.get() as f32).max(1.0);
    let at = |(x, y): (Mm, Mm)| paper.min + vec2(x.get() as f32, y.get() as f32) * scale;
    for (from, to) in &item.folds {
        let pen = Stroke::new(1.0, Color32::from_gray(0x8C));
        ui.painter().extend(Shape::dashed_line(&[at(*from), at(*to)], pen, DASH.0, DASH.1));
    }
}

/// Pictures with newer ones in their places; those that have no place yet come last.
fn over(mut old: Vec<Item>, new: Vec<Item>) -> Vec<Item> {
    let back = |item: &Item| item.label.ends_with(", back");
    for item in new {
        match old.iter_mut().find(|known| known.id == item.id && back(known) == back(&item)) {
            Some(known) => *known = item,
            None => old.push(item),
        }
    }
    old
}

/// A picture as some eyes see it.
fn seen(image: &Arc<ColorImage>, eyes: Eyes) -> Arc<ColorImage> {
    if eyes == Eyes::Full {
        return image.clone();
    }
    let lens = Lens::new(eyes);
    let mut image = (**image).clone();
    // Most pixels are of the same colour as the one before: grounds are flat.
    let mut last = (Color32::TRANSPARENT, Color32::TRANSPARENT);
    for pixel in &mut image.pixels {
        if *pixel != last.0 {
            let [r, g, b, a] = pixel.to_srgba_unmultiplied();
            let Colour { r, g, b } = lens.see(Colour { r, g, b });
            last = (*pixel, Color32::from_rgba_unmultiplied(r, g, b, a));
        }
        *pixel = last.1;
    }
    Arc::new(image)
}

/// How large a piece is shown in a column of this width.
#[expect(clippy::cast_possible_truncation, reason = "a size on paper")]
fn shown_size(item: &Item, room: f32) -> Vec2 {
    let (w, h) = (item.size.w.get() as f32, item.size.h.get() as f32);
    let scale = (room / w.max(1.0)).min(MOST_PT_PER_MM);
    vec2(w * scale, h * scale)
}

/// What the piece is, below it, and what type setting had to say.
fn caption_ui(ui: &mut Ui, cx: &Ctx<'_>, item: &Item, room: f32) {
    ui.allocate_ui_with_layout(vec2(room, 18.0), Layout::top_down(Align::Center), |ui| {
        ui.spacing_mut().item_spacing.y = 1.0;
        let host = if item.audience == Audience::Host { ", for the host" } else { "" };
        let copies = if item.copies > 1 { format!(", {} copies", item.copies) } else { String::new() };
        let size = format!("{:.0} × {:.0} mm{copies}{host}", item.size.w.get(), item.size.h.get());
        ui.label(RichText::new(&item.label).size(13.0).color(cx.tokens.ink));
        // A specimen of a font is no piece, and has no size of its own.
        if !item.id.starts_with(SPECIMEN) {
            ui.label(RichText::new(size).size(12.5).color(cx.tokens.quiet));
        }
        for words in &item.overflows {
            ui.chip(Mark::Blocks, &format!("does not fit: {words}"));
        }
        if !item.missing.is_empty() {
            let letters: String = item.missing.iter().take(12).collect();
            ui.chip(Mark::Blocks, &format!("the font lacks: {letters}"));
        }
    });
}

/// What stands on the desk when nothing is printed for the thing in hand: the kit at a glance.
fn about_ui(ui: &mut Ui, cx: &Ctx<'_>) {
    let kit = cx.kit;
    ui.group_card(|ui| {
        ui.strong_small(&kit.title);
        ui.label(cx.say(&kit.brief));
        ui.add_space(8.0);
        for (count, one, many) in [
            (kit.puzzles.len(), "puzzle", "puzzles"),
            (kit.locks.len(), "lock", "locks"),
            (kit.boxes.len(), "box", "boxes"),
            (kit.spots.len(), "spot", "spots"),
            (kit.props.len(), "prop", "props"),
        ] {
            ui.quiet(&format!("{count} {}", if count == 1 { one } else { many }));
        }
        ui.quiet(&format!(
            "{} to {} guests, {} to {} years, {} min",
            kit.players.0, kit.players.1, kit.ages.0, kit.ages.1, kit.minutes
        ));
    });
}
