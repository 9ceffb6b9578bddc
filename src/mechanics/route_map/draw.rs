//! The map and the card with the route.

use super::land::{BROAD, ISLAND, Land, rose};
use super::{CARD, MAP, Place, Task, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, mm};
use crate::mechanics::sketch::{jitter, with_text};
use crate::mechanics::{Dressing, paper};
use crate::script::{Rich, capital};
use crate::units::{Mm, Rect, Size};

/// Width of the map's border with its blocks, one for each square.
const BORDER: Mm = Mm::new(3.0);
/// Height of the strip below the map, with the rose.
const STRIP: Mm = Mm::new(24.0);
/// How far the plate of a picture and, right and below, the disc of its sign reach from their place, in squares.
const PLATE: f64 = 0.38;
const SIGN: f64 = 0.49;
/// Room for a letter of the rose, and in large print.
const LETTER: (Mm, Mm) = (Mm::new(4.6), Mm::new(5.4));
/// How far a crossing of roads stands out of line, as a share of a square.
const OUT_OF_LINE: f64 = 0.14;

pub(super) fn map(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    if !view.whole() {
        return Err(Trouble::new("the map is not whole").hint("lay the puzzle out again from its setup"));
    }
    let title = cx.name("map-title", "The map");
    let north = if view.north { "North is up." } else { "" };
    let alt =
        format!("{title}: a map of {} by {} squares with {} places. {north}", view.cols, view.rows, view.places.len());
    let (mut face, slot) = paper::sheet(cx, "board", title, alt.trim().to_owned())?;
    let space = Rect { h: slot.h - STRIP, ..slot }.inset(BORDER + mm(0.5));
    let grid = paper::Grid::fit(space, view.rows, view.cols, mm(26.0));
    let chart = Chart { view, grid };
    chart.border(&mut face, cx);
    chart.ground(&mut face, cx);
    chart.places(&mut face, cx)?;
    let bottom = grid.rect.bottom() + BORDER + mm(1.0);
    let strip = Rect { y: bottom, h: slot.bottom() - bottom, ..slot };
    chart.below(&mut face, strip, cx);
    Ok(cx.piece(MAP, "", face))
}

struct Chart<'a> {
    view: &'a View,
    grid: paper::Grid,
}

impl Chart<'_> {
    /// Whether the squares are drawn, and steps counted in them.
    const fn squared(&self) -> bool {
        !matches!(self.view.task, Task::Shortest(..))
    }

    /// The middle of a square, from the top left of the map.
    fn middle(&self, at: usize) -> (Mm, Mm) {
        let (row, col) = (at / self.view.cols, at % self.view.cols);
        let out = if self.squared() { 0.0 } else { OUT_OF_LINE };
        let (dx, dy) = jitter(row, col, 5);
        let cell = self.grid.cell;
        // Picture and sign of a place reach so far to either side, and must stay on the map.
        let on = |at: usize, by: f64, of: usize| (at as f64 + 0.5 + out * by).clamp(PLATE, of as f64 - SIGN);
        (cell * on(col, dx, self.view.cols), cell * on(row, dy, self.view.rows))
    }

    /// A border of blocks, dark and light in turn, one for each square, as charts have it.
    fn border(&self, face: &mut Face, cx: &Dressing<'_>) {
        let rect = self.grid.rect.inset(-BORDER);
        let mut drawing = Drawing::new(Size { w: rect.w, h: rect.h });
        let (ink, paper) = (cx.colour("ink"), cx.colour("paper"));
        let cell = self.grid.cell;
        drawing.rect(
            Rect::of(Size { w: rect.w, h: rect.h }),
            Mm::ZERO,
            Pen { fill: Some(paper), ..Pen::line(ink, mm(0.5)) },
        );
        let band = BORDER * 0.45;
        let inner = (BORDER - band) / 2.0;
        for col in (0..self.view.cols).step_by(2) {
            for y in [inner, rect.h - inner - band] {
                drawing.rect(Rect { x: BORDER + cell * col as f64, y, w: cell, h: band }, Mm::ZERO, Pen::fill(ink));
            }
        }
        for row in (0..self.view.rows).step_by(2) {
            for x in [inner, rect.w - inner - band] {
                drawing.rect(Rect { x, y: BORDER + cell * row as f64, w: band, h: cell }, Mm::ZERO, Pen::fill(ink));
            }
        }
        face.art(drawing.svg(), rect, String::new());
    }

    fn ground(&self, face: &mut Face, cx: &Dressing<'_>) {
        let rect = self.grid.rect;
        let size = Size { w: rect.w, h: rect.h };
        let mut drawing = Drawing::new(size);
        let (ink, line, paper) = (cx.colour("ink"), cx.colour("line"), cx.colour("paper"));
        // Roads keep to the land, so it reaches farther out under them.
        let shape = if self.squared() { ISLAND } else { BROAD };
        let land = Land { size, shape, of: self.view.cols * 31 + self.view.places.len() };
        land.draw(&mut drawing, cx);
        let empty = |at: usize| self.view.places.iter().all(|place| place.at != at);
        let cell = self.grid.cell;
        if self.squared() {
            for at in (0..self.view.cols * self.view.rows).filter(|at| empty(*at)) {
                let (dx, dy) = jitter(at, 1, 9);
                // Every other square stays bare.
                if dx > 0.0 {
                    let (x, y) = self.middle(at);
                    land.mark(&mut drawing, (x + cell * (dx - 0.5) * 0.3, y + cell * dy * 0.2), cell, at, cx);
                }
            }
            for row in 1..self.view.rows {
                drawing.line((Mm::ZERO, cell * row as f64), (size.w, cell * row as f64), Pen::line(line, mm(0.25)));
            }
            for col in 1..self.view.cols {
                drawing.line((cell * col as f64, Mm::ZERO), (cell * col as f64, size.h), Pen::line(line, mm(0.25)));
            }
        } else {
            // All edges of roads first, then all beds over them, so that roads that meet are one.
            for pen in [Pen::line(ink, cell * 0.15), Pen::line(paper, cell * 0.09)] {
                for (a, b) in &self.view.roads {
                    drawing.line(self.middle(*a), self.middle(*b), pen);
                }
            }
            for at in (0..self.view.cols * self.view.rows).filter(|at| empty(*at)) {
                let (x, y) = self.middle(at);
                drawing.circle(x, y, cell * 0.085, Pen::fill(ink));
            }
        }
        drawing.rect(Rect::of(size), Mm::ZERO, Pen::line(ink, mm(0.5)));
        face.art(drawing.svg(), rect, String::new());
    }

    fn places(&self, face: &mut Face, cx: &Dressing<'_>) -> Hinted<()> {
        let cell = self.grid.cell;
        let mut discs = Drawing::new(Size { w: self.grid.rect.w, h: self.grid.rect.h });
        let (paper, ink) = (cx.colour("paper"), cx.colour("ink"));
        let mut pictures = Vec::new();
        let mut signs = Vec::new();
        for Place { at, picture, sign } in &self.view.places {
            let (x, y) = self.middle(*at);
            let side = if sign.is_some() { cell * 0.54 } else { cell * 0.62 };
            // A plate under the picture keeps it clear of roads and of the coast.
            discs.circle(x, y, cell * 0.36, Pen { fill: Some(paper), ..Pen::line(ink, mm(0.3)) });
            let shift = if sign.is_some() { cell * 0.07 } else { Mm::ZERO };
            let (px, py) = (x - shift, y - shift);
            let rect = Rect { x: px - side / 2.0, y: py - side / 2.0, w: side, h: side };
            pictures.push((rect.moved(self.grid.rect.x, self.grid.rect.y), picture));
            if let Some(sign) = sign {
                let radius = (cell * 0.2).max(mm(2.7));
                let (sx, sy) = (x + cell * 0.27, y + cell * 0.26);
                signs.push((sx, sy, radius, *sign));
            }
        }
        let plates = discs.svg();
        face.art(plates, self.grid.rect, String::new());
        for (rect, picture) in pictures {
            face.art(cx.symbol(picture)?, rect, picture.clone());
        }
        let mut rings = Drawing::new(Size { w: self.grid.rect.w, h: self.grid.rect.h });
        for (x, y, radius, _) in &signs {
            rings.circle(*x, *y, *radius, Pen { fill: Some(paper), ..Pen::line(ink, mm(0.35)) });
        }
        face.art(rings.svg(), self.grid.rect, String::new());
        for (x, y, radius, sign) in signs {
            let rect = Rect { x: x - radius, y: y - radius, w: radius * 2.0, h: radius * 2.0 };
            let rect = rect.moved(self.grid.rect.x, self.grid.rect.y);
            paper::symbol(face, cx, rect, &sign.to_string(), radius.to_pt().get() * 1.35);
        }
        Ok(())
    }

    /// The rose with its N, and what a square or a dot is.
    fn below(&self, face: &mut Face, strip: Rect, cx: &Dressing<'_>) {
        let mut drawing = Drawing::new(Size { w: strip.w, h: strip.h });
        let ink = cx.colour("ink");
        let letter = if cx.large() { LETTER.1 } else { LETTER.0 };
        let radius = mm(8.0).min((strip.h - letter * 2.0) / 2.0);
        let (x, y) = (strip.w / 2.0, strip.h - radius - letter);
        if self.view.north {
            rose(&mut drawing, (x, y), radius, cx);
            // All four: who knows where north is may still mix up east and west.
            let out = radius + letter / 2.0;
            for (name, dx, dy) in [("N", 0.0, -1.0), ("W", -1.0, 0.0), ("E", 1.0, 0.0), ("S", 0.0, 1.0)] {
                let middle = (strip.x + x + out * dx, strip.y + y + out * dy);
                let at = Rect { x: middle.0 - letter / 2.0, y: middle.1 - letter / 2.0, w: letter, h: letter };
                paper::symbol(face, cx, at, name, 12.0);
            }
        }
        let left = Rect { x: strip.x + mm(4.0), y: strip.y + strip.h * 0.5, w: strip.w * 0.36, h: strip.h * 0.4 };
        if matches!(self.view.task, Task::Legs(..)) {
            // A scale of one square, in the border's blocks.
            let (bx, by, w) = (mm(4.0), strip.h * 0.36, self.grid.cell);
            drawing.rect(Rect { x: bx, y: by, w, h: mm(1.4) }, Mm::ZERO, Pen::fill(ink));
            let second = Rect { x: bx + w, y: by, w, h: mm(1.4) };
            drawing.rect(second, Mm::ZERO, Pen { fill: Some(cx.colour("paper")), ..Pen::line(ink, mm(0.3)) });
            let h = if cx.large() { strip.h - by - mm(2.0) } else { mm(5.0) };
            let words = Rect { y: strip.y + by + mm(2.0), h, ..left };
            paper::row(face, cx, words, Rich::plain("Each square counts as one."), 10.0);
        } else if matches!(self.view.task, Task::Shortest(..)) {
            paper::row(face, cx, left, Rich::plain("From dot to dot is a step."), 10.0);
        }
        face.art(drawing.svg(), strip, String::new());
    }
}

pub(super) fn card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let title = cx.name("route-title", "The route");
    let (before, after) = texts::rule(view);
    let legs = texts::legs(view);
    let alt = format!("{}: {before} {} {after}", capital(title), legs.join(" "));
    let frame = if matches!(view.task, Task::Shortest(..)) { "landscape" } else { "portrait" };
    let (mut face, slot) = paper::sheet(cx, frame, title, alt)?;
    match &view.task {
        Task::Shortest(..) => {
            let mut all = with_text(&view.text, &before);
            all.paragraphs.extend(Rich::plain(after).paragraphs);
            paper::words(&mut face, cx, slot, all, 13.0);
        }
        Task::Legs(..) => {
            let head = if view.text.is_empty() { 0.34 } else { 0.44 };
            let foot = 0.16;
            paper::words(&mut face, cx, Rect { h: slot.h * head, ..slot }, with_text(&view.text, &before), 11.5);
            let middle =
                Rect { y: slot.y + slot.h * head + mm(2.5), h: slot.h * (1.0 - head - foot) - mm(4.0), ..slot };
            // The lines are short and begin one below the other, not far from the middle.
            let aside = if cx.large() { Mm::ZERO } else { slot.w * 0.2 };
            let middle = Rect { x: middle.x + aside, w: middle.w - aside, ..middle };
            paper::lines(&mut face, cx, middle, &legs, 11.5);
            let end = Rect { y: slot.bottom() - slot.h * foot, h: slot.h * foot, ..slot };
            paper::words(&mut face, cx, end, Rich::plain(after), 11.5);
        }
        Task::Bearings(stops) => {
            let head = if view.text.is_empty() { 0.16 } else { 0.34 };
            let foot = 0.2;
            paper::words(&mut face, cx, Rect { h: slot.h * head, ..slot }, with_text(&view.text, &before), 11.5);
            let middle = Rect { y: slot.y + slot.h * head, h: slot.h * (1.0 - head - foot), ..slot };
            pictures(&mut face, middle, stops, cx)?;
            let end = Rect { y: slot.bottom() - slot.h * foot, h: slot.h * foot, ..slot };
            paper::words(&mut face, cx, end, Rich::plain(after), 11.5);
        }
    }
    Ok(cx.piece(CARD, "", face))
}

/// Pictures in rows, each with an arrowhead to the next.
fn pictures(face: &mut Face, slot: Rect, stops: &[String], cx: &Dressing<'_>) -> Hinted<()> {
    let columns = if stops.len() > 4 { 3 } else { 2 };
    let rows = stops.len().div_ceil(columns).max(1);
    let (w, h) = (slot.w / columns as f64, slot.h / rows as f64);
    let side = (w * 0.72).min(h * 0.9);
    let mut arrows = Drawing::new(face.size);
    for (index, stop) in stops.iter().enumerate() {
        let (x, y) = (slot.x + w * (index % columns) as f64, slot.y + h * (index / columns) as f64);
        let at = Rect { x: x + (w * 0.76 - side) / 2.0, y: y + (h - side) / 2.0, w: side, h: side };
        face.art(cx.symbol(stop)?, at, stop.clone());
        if index + 1 < stops.len() {
            let (ax, ay) = (x + w * 0.88, y + h / 2.0);
            let points = [(ax - mm(1.4), ay - mm(1.8)), (ax + mm(1.8), ay), (ax - mm(1.4), ay + mm(1.8))];
            arrows.polygon(&points, Pen::fill(cx.colour("ink")));
        }
    }
    let whole = Rect::of(face.size);
    face.art(arrows.svg(), whole, String::new());
    Ok(())
}
