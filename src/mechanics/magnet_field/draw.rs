//! The board, its rule card, and the host's template for the washers.

use super::{EDGE, FIELD, Kind, LEAST_ACROSS, Rule, Shape, View, WASHER, shape};
use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Audience, Face, Piece, Role, TextRun, Valign};
use crate::mechanics::Dressing;
use crate::script::Rich;
use crate::units::{Mm, Pt, Rect, Size};

/// Least size of the numbers (common practice for cards, no source).
const LEAST: Pt = Pt::new(9.0);

/// The field's scale on the theme's frame.
fn scale(view: &View, slot: Rect) -> Hinted<f64> {
    let scale = (slot.w.get() / FIELD.w.get()).min(slot.h.get() / FIELD.h.get());
    let small = view.shapes.iter().any(|shape| shape.across * scale < LEAST_ACROSS - Mm::new(0.01));
    if small {
        return Err(Trouble::new(format!(
            "on the theme's frame `board` shapes would be under {} mm",
            LEAST_ACROSS.get()
        ))
        .hint(format!(
            "set a larger shape_size, or draw the frame's `slot-field` {} by {} mm",
            FIELD.w.get(),
            FIELD.h.get()
        )));
    }
    Ok(scale)
}

/// A shape's middle in a slot.
fn middle(shape: &Shape, slot: Rect, scale: f64) -> (Mm, Mm) {
    (slot.x + slot.w / 2.0 + shape.x * scale, slot.y + slot.h / 2.0 + shape.y * scale)
}

/// Holds every washer within the board.
fn clear_of_edge(view: &View, slot: Rect, scale: f64, size: Size) -> Hinted<()> {
    let inner = Rect::of(size).inset(EDGE);
    let out = view.shapes.iter().filter(|shape| shape.pulls).map(|shape| middle(shape, slot, scale));
    if out.clone().all(|(x, y)| x >= inner.x && x <= inner.right() && y >= inner.y && y <= inner.bottom()) {
        return Ok(());
    }
    Err(Trouble::new(format!("on the theme's frame `board` a washer would lie under {} mm from the edge", EDGE.get()))
        .hint("draw the frame's `slot-field` farther from its edges"))
}

fn number(cx: &Dressing<'_>, of: &Shape, middle: (Mm, Mm), across: Mm) -> TextRun {
    let slot = shape::number_slot(of.kind, middle, across);
    let text = Rich::plain(of.number.clone());
    TextRun::new(slot, Role::Code, text, Pt::new(15.0), cx.colour("ink"), cx.at(PuzzleField::Setup)).at_least(LEAST)
}

pub(super) fn board(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("board")?;
    let slot = cx.slot(&frame, "board", "field")?;
    let scale = scale(view, slot)?;
    clear_of_edge(view, slot, scale, frame.size)?;
    let title = cx.name("board-title", "Which of these pull?");
    let mut face = Face::on(&frame, format!("{title} A board of {} shapes, a number in each.", view.shapes.len()));
    cx.title(&mut face, &frame, "board", title)?;
    let mut drawing = Drawing::new(frame.size);
    let pen = Pen { fill: Some(cx.colour("paper")), ..Pen::line(cx.colour("ink"), Mm::new(0.5)) };
    for of in &view.shapes {
        shape::draw(&mut drawing, of.kind, middle(of, slot, scale), of.across * scale, pen);
    }
    face.art(drawing.svg(), Rect::of(frame.size), "");
    for of in &view.shapes {
        face.text(number(cx, of, middle(of, slot, scale), of.across * scale));
    }
    cx.draw_mark(&mut face, &frame)?;
    Ok(Piece { measured: true, ..cx.piece("board", "", face) })
}

pub(super) fn template(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("board")?;
    let slot = cx.slot(&frame, "board", "field")?;
    let scale = scale(view, slot)?;
    let mut face = Face::new(frame.size, "The host’s template: where the washers go on the back of the board.");
    let thin = Pen::line(cx.colour("line"), Mm::new(0.2)).dashed(Mm::new(1.0), Mm::new(1.0));
    let thick = Pen::line(cx.colour("ink"), Mm::new(0.8));
    let mut drawing = Drawing::new(frame.size);
    drawing.rect(Rect::of(frame.size).inset(Mm::new(0.5)), Mm::ZERO, thin);
    for of in &view.shapes {
        // Seen from behind, left is right.
        let (x, y) = middle(of, slot, scale);
        let mirrored = (frame.size.w - x, y);
        if of.pulls {
            drawing.circle(mirrored.0, mirrored.1, WASHER / 2.0, thick);
            face.text(number(cx, &Shape { kind: Kind::Circle, ..of.clone() }, mirrored, WASHER));
        } else {
            drawing.circle(mirrored.0, mirrored.1, Mm::new(1.0), thin);
        }
    }
    // Above and below the field, farther off than a ring reaches out of it: few words, since in large print two lines fit
    // above and one below.
    let beyond = WASHER / 2.0 - LEAST_ACROSS / 2.0 + Mm::new(0.5);
    let strip = Rect { x: Mm::new(8.0), y: Mm::new(4.0), w: frame.size.w - Mm::new(16.0), h: Mm::ZERO };
    let below = slot.bottom() + beyond;
    let head = Rect { h: slot.y - beyond - strip.y, ..strip };
    let foot = Rect { y: below, h: frame.size.h - strip.y - below, ..strip };
    let said = [
        (head, "For the host: the board from behind. Lay it on the board’s back, edges flush, these words upright."),
        (foot, "Thick rings are washers of 18 mm: prick, then tape."),
    ];
    for (rect, words) in said {
        let (text, from) = (Rich::plain(words), cx.at(PuzzleField::Setup));
        let run = TextRun::new(rect, Role::Text, text, Pt::new(11.0), cx.colour("ink"), from);
        face.text(run.aligned(Align::Left, Valign::Top).at_least(Pt::new(9.0)));
    }
    face.layers.insert(
        0,
        crate::face::Layer::Art(crate::face::Art {
            svg: drawing.svg(),
            rect: Rect::of(frame.size),
            turn: 0.0,
            alt: String::new(),
        }),
    );
    let piece = cx.piece("template", "Washer template, for the host", face);
    Ok(Piece { audience: Audience::Host, measured: true, ..piece })
}

/// The rule in words, as the card prints it.
pub(super) fn rule_words(view: &View, cx: &Dressing<'_>) -> String {
    let board = cx.name("board", "the board");
    match &view.rule {
        Some(Rule::Kinds(kinds)) => {
            let rows = if columns(kinds.len()) < kinds.len() { ", the top row first" } else { "" };
            format!(
                "Some shapes on {board} pull. Take their numbers in the order of the shapes below, from left to right{rows}."
            )
        }
        Some(Rule::Rows) => {
            format!("Some shapes on {board} pull. Take their numbers from the top of the board to the bottom.")
        }
        Some(Rule::Sizes) => {
            format!("Some shapes on {board} pull. Take their numbers from the smallest shape to the largest.")
        }
        None => format!("Some shapes on {board} pull. Take their numbers."),
    }
}

/// How many outlines stand in a row of the rule card.
const fn columns(kinds: usize) -> usize {
    if kinds > 4 { kinds.div_ceil(2) } else { kinds }
}

pub(super) fn card(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let title = cx.name("card-title", "How to read the board");
    let words = rule_words(view, cx);
    let frame = cx.frame("landscape")?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let kinds: &[Kind] = match &view.rule {
        Some(Rule::Kinds(kinds)) => kinds,
        _ => &[],
    };
    let names: Vec<&str> = kinds.iter().map(|kind| kind.name(cx)).collect();
    let order = if names.is_empty() { String::new() } else { format!(" The order: {}.", names.join(", ")) };
    let mut face = Face::on(&frame, format!("A card, {title}: {words}{order}"));
    cx.title(&mut face, &frame, "landscape", title)?;
    // With outlines the words take the upper part of the card, the outlines the rest.
    let share = if kinds.is_empty() { 1.0 } else { 0.34 };
    let from = cx.at(PuzzleField::Setup);
    let text = Rect { h: body.h * share, ..body };
    face.text(TextRun::new(text, Role::Text, Rich::plain(words), Pt::new(13.0), cx.colour("ink"), from));
    if !kinds.is_empty() {
        let gap = Mm::new(1.6);
        let rest = Rect { y: body.y + text.h + gap, h: body.h - text.h - gap, ..body };
        outlines(&mut face, kinds, &names, rest, frame.size, cx);
    }
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece("card", "", face))
}

/// Draws the outlines in their order, each with its name below.
fn outlines(face: &mut Face, kinds: &[Kind], names: &[&str], slot: Rect, size: Size, cx: &Dressing<'_>) {
    let columns = columns(kinds.len());
    let rows = kinds.len().div_ceil(columns.max(1));
    #[expect(clippy::cast_precision_loss, reason = "eight kinds at most")]
    let (w, h) = (slot.w / columns as f64, slot.h / rows as f64);
    let name_height = Mm::new(4.4).min(h / 2.0);
    let across = (h - name_height - Mm::new(0.6)).min(w * 0.9);
    let mut drawing = Drawing::new(size);
    let pen = Pen { fill: Some(cx.colour("paper")), ..Pen::line(cx.colour("ink"), Mm::new(0.4)) };
    for (index, (kind, name)) in kinds.iter().zip(names).enumerate() {
        #[expect(clippy::cast_precision_loss, reason = "eight kinds at most")]
        let (column, row) = ((index % columns.max(1)) as f64, (index / columns.max(1)) as f64);
        let (x, y) = (slot.x + w * column, slot.y + h * row);
        shape::draw(&mut drawing, *kind, (x + w / 2.0, y + (h - name_height) / 2.0), across, pen);
        let label = Rect { x, y: y + h - name_height, w, h: name_height };
        let from = cx.at(PuzzleField::Setup);
        face.text(TextRun::new(label, Role::Text, Rich::plain(*name), Pt::new(10.0), cx.colour("ink"), from));
    }
    face.art(drawing.svg(), Rect::of(size), "");
}
