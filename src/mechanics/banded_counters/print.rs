use super::texts::{card_name, jar_name, rule};
use super::{Band, JAR, ORDER_CARD, Pattern, View};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Face, Outline, Piece, Role, TextRun, Valign, mm};
use crate::mechanics::Dressing;
use crate::mechanics::lid;
use crate::script::capital;
use crate::script::{Rich, parse};
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// Diameter of a printed counter: a digit of 20 pt with its ring and sign.
pub(super) const DISC: Mm = Mm::new(28.0);

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let alt = format!("the lid of {}", jar_name(cx));
    let words = lid::Words { title: &parse(&view.lid_title), text: &Rich::default(), alt: &alt };
    let mut pieces = vec![lid::disc(cx, JAR, view.lid_mm, &words)?];
    if let Some(card) = &view.card {
        pieces.push(order_card(view, card, cx)?);
    }
    if view.discs {
        pieces.extend(view.counters.iter().enumerate().map(|(index, counter)| {
            let band = counter.band.and_then(|band| view.bands.get(band));
            let mut piece = cx.piece(JAR, "counter", disc(band, &counter.text, view.baseline, cx));
            piece.id = format!("{}-{JAR}-counter-{}", cx.puzzle, index + 1);
            piece.copies = counter.count;
            piece
        }));
    }
    Ok(pieces)
}

/// The order card: a line of text, the rule, then a row for each band: swatch, sign, name.
fn order_card(view: &View, card: &[usize], cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("portrait")?;
    let mut face = Face::on(&frame, format!("{}: bands in their order", capital(card_name(cx))));
    cx.title(&mut face, &frame, "portrait", &view.card_title)?;
    let body = cx.slot(&frame, "portrait", "body")?;
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    // One text, so that both of its paragraphs are of one size.
    let told = Rect { h: body.h * 0.4, ..body };
    let mut text = parse(&view.card_text);
    text.paragraphs.extend(Rich::plain(rule(cx)).paragraphs);
    face.text(TextRun::new(told, Role::Text, text, Pt::new(12.5), ink, from.clone()));
    let list = Rect { y: body.y + body.h * 0.45, h: body.h * 0.55, ..body };
    let row = (list.h / card.len().max(1) as f64).min(mm(15.0));
    let mut drawing = Drawing::new(Size { w: list.w, h: list.h });
    for (index, band) in card.iter().filter_map(|band| view.bands.get(*band)).enumerate() {
        let y = row * index as f64;
        let swatch = Rect { x: mm(1.0), y: y + row * 0.2, w: mm(18.0), h: row * 0.6 };
        drawing.rect(swatch, row * 0.3, Pen { fill: Some(band.colour), ..Pen::line(ink, mm(0.35)) });
        let left = if band.pattern.is_some() { mm(33.0) } else { mm(22.0) };
        let line = Rect { x: list.x + left, y: list.y + y + mm(0.5), w: list.w - left, h: row - mm(1.0) };
        let mut name = line;
        if let Some(pattern) = band.pattern {
            sign(&mut drawing, pattern, (mm(26.5), y + row / 2.0), (row * 0.3).min(mm(3.6)), ink);
            name.h = line.h * 0.58;
            let below = Rect { y: name.bottom() + mm(0.7), h: line.h - name.h - mm(0.7), ..line };
            let run = TextRun::new(below, Role::Text, Rich::plain(pattern.word()), Pt::new(11.0), ink, from.clone());
            face.text(run.aligned(Align::Left, Valign::Top));
        }
        let (run, down) =
            (Rich::plain(band.name.as_str()), if band.pattern.is_some() { Valign::Bottom } else { Valign::Middle });
        face.text(TextRun::new(name, Role::Text, run, Pt::new(16.0), ink, from.clone()).aligned(Align::Left, down));
    }
    face.art(drawing.svg(), list, "bands with their signs");
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece(ORDER_CARD, "", face))
}

/// A printed counter: a ring in the band's colour, the digit, the sign below.
fn disc(band: Option<&Band>, text: &str, baseline: bool, cx: &Dressing<'_>) -> Face {
    let size = Size { w: DISC, h: DISC };
    let words = band.map_or_else(|| "no band".into(), |band| format!("a {} band", band.name));
    let mut face = Face::new(size, format!("a counter with {words}"));
    face.outline = Outline::Round;
    let ink = cx.colour("ink");
    let middle = DISC / 2.0;
    let mut drawing = Drawing::new(size);
    if let Some(band) = band {
        // The ring in its colour between two thin lines, so that a pale band shows on paper.
        drawing.circle(middle, middle, mm(11.5), Pen::line(band.colour, mm(3.0)));
        for radius in [13.0, 10.0] {
            drawing.circle(middle, middle, mm(radius), Pen::line(ink, mm(0.25)));
        }
        if let Some(pattern) = band.pattern {
            sign(&mut drawing, pattern, (middle, middle + mm(6.2)), mm(1.9), ink);
        }
    }
    let digit = Rect { x: middle - mm(5.0), y: middle - mm(7.5), w: mm(10.0), h: mm(10.0) };
    if !text.is_empty() && baseline {
        let y = digit.bottom() + mm(0.4);
        drawing.line((middle - mm(3.0), y), (middle + mm(3.0), y), Pen::line(ink, mm(0.5)));
    }
    face.art(drawing.svg(), Rect::of(size), words);
    let run = TextRun::new(digit, Role::Code, Rich::plain(text), Pt::new(24.0), ink, cx.at(PuzzleField::Setup));
    face.text(run.at_least(Pt::new(16.0)));
    face
}

/// A pattern's sign about a point.
pub(super) fn sign(drawing: &mut Drawing, pattern: Pattern, at: (Mm, Mm), r: Mm, ink: Colour) {
    let (x, y) = at;
    let pen = Pen::line(ink, mm(0.5));
    match pattern {
        Pattern::Chevron => {
            drawing.line((x - r, y + r * 0.7), (x, y - r * 0.7), pen);
            drawing.line((x, y - r * 0.7), (x + r, y + r * 0.7), pen);
        }
        Pattern::Cross => {
            drawing.line((x - r, y - r), (x + r, y + r), pen);
            drawing.line((x - r, y + r), (x + r, y - r), pen);
        }
        Pattern::Plus => {
            drawing.line((x - r, y), (x + r, y), pen);
            drawing.line((x, y - r), (x, y + r), pen);
        }
        Pattern::Triangle => drawing.polygon(&[(x, y - r), (x + r, y + r), (x - r, y + r)], pen),
        Pattern::Square => drawing.polygon(&[(x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r)], pen),
        Pattern::Bars => {
            for dy in [-0.5, 0.5] {
                drawing.line((x - r, y + r * dy), (x + r, y + r * dy), pen);
            }
        }
        Pattern::Zigzag => {
            let step = r / 2.0;
            let points = [(-2.0, 1.0), (-1.0, -1.0), (0.0, 1.0), (1.0, -1.0), (2.0, 1.0)];
            for pair in points.windows(2) {
                if let [(ax, ay), (bx, by)] = pair {
                    drawing.line((x + step * *ax, y + r * *ay), (x + step * *bx, y + r * *by), pen);
                }
            }
        }
        Pattern::Dots => {
            for dx in [-0.8, 0.0, 0.8] {
                drawing.circle(x + r * dx, y, r * 0.22, Pen::fill(ink));
            }
        }
    }
}
