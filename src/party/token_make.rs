//! The ways in which a hint token is made: what its outside shows, and how the two faces hang together on paper.

use std::sync::Arc;

use crate::diag::{Hinted, Step};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Art, Face, Frame, Layer, Piece, Role, TextRun};
use crate::kit::TokenMake;
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// Art on the outside keeps this far from every edge: printer and fold may be off by 5 mm (reports of home printers
/// name 3 to 4 mm).
const TOLERANCE: Mm = Mm::new(5.0);
/// Height of a flap, in parts of the token's: it covers the words and leaves an edge for the sticker.
const FLAP: f64 = 0.62;
/// Side of the sign on the outside, at most.
const SIGN: Mm = Mm::new(24.0);
/// Height of the row of dots on the outside.
const DOTS: Mm = Mm::new(4.6);

/// What all tokens of a frame show alike, drawn once: the dots of each step, and the rings round a sign.
pub(super) struct TokenArt {
    pub(super) frame: Arc<Frame>,
    dots: [Arc<str>; 3],
    outer_dots: [Arc<str>; 3],
    ring: Arc<str>,
}

impl TokenArt {
    pub(super) fn new(frame: Arc<Frame>, ink: Colour) -> Self {
        let outside = outside_places(Rect::of(frame.size));
        let three = |slot: Rect| Step::ALL.map(|step| drawn_dots(slot, step, ink));
        Self {
            dots: three(frame.slot("dots").unwrap_or(outside.dots)),
            outer_dots: three(outside.dots),
            ring: ring(outside.sign, ink),
            frame,
        }
    }

    /// The dots of a step in the frame's slot.
    pub(super) fn dots(&self, step: Step) -> Arc<str> {
        self.dots[step.number() - 1].clone()
    }
}

/// What the outside of a token says: whose it is, and which step.
pub(super) struct Outside<'a> {
    /// The lock's mark among the theme's symbols; empty when it has none.
    pub(super) mark: &'a str,
    /// What the lock is called.
    pub(super) named: &'a str,
    pub(super) step: Step,
}

/// Makes the token of its inner face in the way that the kit asks for.
///
/// # Errors
/// When the theme's symbol or divider cannot be read.
pub(super) fn made(
    mut piece: Piece,
    make: TokenMake,
    art: &TokenArt,
    cx: &Dressing<'_>,
    outside: &Outside<'_>,
) -> Hinted<Piece> {
    let size = art.frame.size;
    match make {
        TokenMake::Plain => {}
        TokenMake::TwoSided => {
            let mut back = Face::new(size, alt(outside));
            draw(&mut back, Rect::of(size), false, (art, cx), outside)?;
            piece.back = Some(back);
        }
        TokenMake::FoldOver | TokenMake::Flap => {
            let Size { w, h } = size;
            let flap = if make == TokenMake::Flap { h * FLAP } else { Mm::ZERO };
            let mut strip = Face::new(Size { w, h: h * 2.0 + flap }, format!("{} {}", alt(outside), piece.front.alt));
            draw(&mut strip, Rect { x: Mm::ZERO, y: Mm::ZERO, w, h }, true, (art, cx), outside)?;
            strip.layers.extend(piece.front.layers.iter().map(|layer| lowered(layer, h)));
            strip.folds.push(((Mm::ZERO, h), (w, h)));
            if make == TokenMake::Flap {
                strip.folds.push(((Mm::ZERO, h * 2.0), (w, h * 2.0)));
                let rect = Rect { x: Mm::ZERO, y: h * 2.0, w, h: flap }.inset(TOLERANCE);
                let words = Rich::plain("Fold up over the words and close with a sticker.");
                let from = cx.at(crate::diag::PuzzleField::Setup);
                strip.text(TextRun::new(rect, Role::Text, words, Pt::new(9.0), cx.colour("ink"), from));
            }
            piece.front = strip;
        }
    }
    Ok(piece)
}

fn alt(outside: &Outside<'_>) -> String {
    format!("Hint {} of 3 for the mark {}.", outside.step.number(), outside.named)
}

/// Draws the outside: sign and dots about the middle, nothing near an edge. `turned` for a panel that is folded back
/// over its lower edge, and so stands on its head on the sheet.
fn draw(
    face: &mut Face,
    panel: Rect,
    turned: bool,
    (own, cx): (&TokenArt, &Dressing<'_>),
    outside: &Outside<'_>,
) -> Hinted<()> {
    let Places { sign, dots } = outside_places(panel);
    let place = |rect: Rect| if turned { about(panel, rect) } else { rect };
    let turn = if turned { 180.0 } else { 0.0 };
    let ink = cx.colour("ink");
    let mut art = |svg, rect, alt: String| face.layers.push(Layer::Art(Art { svg, rect: place(rect), turn, alt }));
    art(own.ring.clone(), sign, String::new());
    art(own.outer_dots[outside.step.number() - 1].clone(), dots, format!("step {} of 3", outside.step.number()));
    let inner = sign.inset(sign.w * 0.2);
    if outside.mark.is_empty() {
        let words = Rich::plain(outside.named);
        let from = cx.at(crate::diag::PuzzleField::Setup);
        let run = TextRun::new(place(sign.inset(sign.w * 0.16)), Role::Text, words, Pt::new(12.0), ink, from);
        face.text(run.at_least(Pt::new(6.0)).turned(turn));
    } else {
        art(cx.symbol(outside.mark)?, inner, format!("mark: {}", outside.mark));
    }
    Ok(())
}

/// Where sign and dots stand on the outside.
struct Places {
    sign: Rect,
    dots: Rect,
}

fn outside_places(panel: Rect) -> Places {
    let room = panel.inset(TOLERANCE);
    let side = SIGN.min(room.w).min(room.h * 0.6);
    let gap = Mm::new(3.2);
    let top = room.y + (room.h - side - gap - DOTS) / 2.0;
    let sign = Rect { x: room.x + (room.w - side) / 2.0, y: top, w: side, h: side };
    let dots = Rect { x: room.x + room.w * 0.2, y: sign.bottom() + gap, w: room.w * 0.6, h: DOTS };
    Places { sign, dots }
}

/// Two thin circles in which the sign stands.
fn ring(rect: Rect, ink: Colour) -> Arc<str> {
    let mut drawing = Drawing::new(Size { w: rect.w, h: rect.h });
    let middle = rect.w / 2.0;
    for (inset, width) in [(0.4, 0.36), (1.3, 0.14)] {
        drawing.circle(middle, middle, middle - Mm::new(inset), Pen::line(ink, Mm::new(width)));
    }
    drawing.svg()
}

/// Three dots in a row, as many of them filled as the step's number.
fn drawn_dots(slot: Rect, step: Step, ink: Colour) -> Arc<str> {
    let mut drawing = Drawing::new(Size { w: slot.w, h: slot.h });
    let line = Mm::new(0.3);
    let radius = (slot.h / 2.0 - line).min(slot.w / 9.0).max(Mm::new(0.1));
    let gap = (radius * 3.4).min(slot.w / 3.0);
    let mut x = slot.w / 2.0 - gap;
    for number in 1..=3 {
        let fill = (number <= step.number()).then_some(ink);
        drawing.circle(x, slot.h / 2.0, radius, Pen { fill, stroke: Some((ink, line)), dash: None });
        x += gap;
    }
    drawing.svg()
}

/// A rectangle's place after half a turn about the panel's middle.
fn about(panel: Rect, rect: Rect) -> Rect {
    Rect {
        x: panel.x + panel.right() - rect.right(),
        y: panel.y + panel.bottom() - rect.bottom(),
        w: rect.w,
        h: rect.h,
    }
}

/// A layer moved down.
fn lowered(layer: &Layer, by: Mm) -> Layer {
    match layer.clone() {
        Layer::Art(mut art) => {
            art.rect = art.rect.moved(Mm::ZERO, by);
            Layer::Art(art)
        }
        Layer::Text(mut run) => {
            run.rect = run.rect.moved(Mm::ZERO, by);
            run.within = run.within.map(|shape| shape.iter().map(|(x, y)| (*x, *y + by)).collect());
            Layer::Text(run)
        }
    }
}
