use super::print::LAP;
use super::{Carrier, Direction, JAR, LABEL, Symbol, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Printed, PrintedShape, lanes, middle};
use crate::mechanics::{Dressing, front};
use crate::theme::Colour;
use crate::units::Mm;

/// Symbols on the guests' strip stand where the template shows them, within this.
const SAME_PLACE: f64 = 1.0;

/// The label, the strip or sheet with what stays, and the host's template with all that is written.
pub(super) fn view(printed: &[Printed], _: &Dressing<'_>) -> Hinted<View> {
    let label = front(printed, LABEL)?.words();
    let carrier = if label.contains("row by row") { Carrier::Tile } else { Carrier::Jar };
    let sides = |kind: &str| -> Vec<&Printed> {
        let kind = format!("-{JAR}-{kind}");
        printed.iter().filter(|side| side.part == JAR && side.piece.contains(&kind)).collect()
    };
    let (template, field, tab) = (sides("template"), sides("field"), sides("start"));
    let lap = scale(&template) * LAP.get();
    let symbols = symbols(&template, carrier, lap);
    let guests = self::symbols(&field, carrier, lap);
    if !field.is_empty() {
        let stay: Vec<&Symbol> = symbols.iter().filter(|symbol| symbol.lasting).collect();
        let same = |(a, b): (&&Symbol, &Symbol)| a.text == b.text && (a.at - b.at).abs() < SAME_PLACE;
        if stay.len() != guests.len() || !stay.iter().zip(&guests).all(same) {
            return Err(Trouble::new("what stays is not the same on the guests' print and on the host's template"));
        }
    }
    let around_mm =
        template.iter().map(|side| side.size.w.get() - if carrier == Carrier::Jar { lap } else { 0.0 }).sum();
    // Where nothing but the template is printed, its own marks are copied with the symbols.
    let marks = if field.is_empty() && (carrier == Carrier::Tile || tab.is_empty()) { &template } else { &field };
    let (start, arrow) = match (carrier, tab.as_slice()) {
        (Carrier::Tile, _) => (marks.iter().any(|side| points_up(side)), None),
        (Carrier::Jar, [tab]) => (thick_line(tab).is_some(), way(tab)),
        (Carrier::Jar, _) if field.is_empty() => (false, None),
        (Carrier::Jar, _) => strip_start(marks, lap)?,
    };
    let told = direction(&label);
    if arrow.is_some() && told != Direction::Unstated && arrow != Some(told) {
        return Err(Trouble::new("the start mark's arrow and the words on the lid point opposite ways"));
    }
    Ok(View {
        carrier,
        symbols,
        start,
        direction: arrow.unwrap_or(told),
        around_mm,
        pitch_mm: 0.0,
        printed: !field.is_empty(),
        lid_mm: 0.0,
        label_title: String::new(),
        label_text: label,
    })
}

/// The way round that the words state.
fn direction(label: &str) -> Direction {
    if label.contains("to the right.") {
        Direction::Rightwards
    } else if label.contains("to the left.") {
        Direction::Leftwards
    } else {
        Direction::Unstated
    }
}

/// The printed scale, by the strip's height or the paper's width; a strip is 26 mm high.
fn scale(strips: &[&Printed]) -> f64 {
    strips.first().map_or(1.0, |side| side.size.h.get() / super::print::STRIP.get())
}

/// The symbols of a strip in pieces or of a sheet, from the top and from the left; on the template what is wiped off
/// stands in brackets.
fn symbols(sides: &[&Printed], carrier: Carrier, lap: f64) -> Vec<Symbol> {
    let mut found = Vec::new();
    let mut left = 0.0;
    for side in sides {
        let rows = lanes(side.texts.iter().map(|text| text.y), Mm::new(8.0));
        for text in &side.texts {
            let words = text.text.trim();
            let bare = words.trim_start_matches('(').trim_end_matches(')');
            let row = rows.iter().position(|y| (*y - text.y).get().abs() < 8.0).filter(|_| carrier == Carrier::Tile);
            found.extend(bare.chars().map(|symbol| Symbol {
                text: symbol,
                lasting: bare.len() == words.len(),
                row: row.and_then(|row| u16::try_from(row).ok()).unwrap_or(0),
                at: left + middle(text.rect).0.get(),
            }));
        }
        left += side.size.w.get() - lap;
    }
    found.sort_by(|a, b| a.row.cmp(&b.row).then(a.at.total_cmp(&b.at)));
    found
}

fn dark(shape: &&PrintedShape) -> bool {
    let seen = |colour: Colour| colour.contrast(Colour::WHITE) > 2.0;
    shape.fill.is_some_and(seen) || shape.stroke.is_some_and(|(colour, _)| seen(colour))
}

/// Where the thick upright line of a start mark stands.
fn thick_line(side: &Printed) -> Option<Mm> {
    let thick = |shape: &&PrintedShape| {
        shape.stroke.is_some_and(|(_, width)| width.get() > side.size.h.get() / 32.0)
            && shape.rect.h.get() > side.size.h.get() * 0.6
            && !shape.dashed
    };
    let line = side.shapes.iter().filter(dark).find(|shape| thick(shape))?;
    line.segment().map(|(from, _)| from.0)
}

/// The three corners of a filled arrowhead.
fn arrowhead(side: &Printed) -> Option<[Dot; 3]> {
    side.shapes.iter().filter(dark).find_map(|shape| {
        let [line] = shape.contours.as_slice() else { return None };
        <[Dot; 3]>::try_from(line.points.as_slice()).ok().filter(|_| shape.fill.is_some())
    })
}

/// Which way an arrowhead points along the strip: away from its two corners that stand above one another.
fn way(side: &Printed) -> Option<Direction> {
    let corners = arrowhead(side)?;
    let mid = corners.iter().fold(0.0, |sum, corner| sum + corner.0.get()) / 3.0;
    let right = corners.iter().filter(|corner| corner.0.get() > mid).count();
    Some(if right == 1 { Direction::Rightwards } else { Direction::Leftwards })
}

fn points_up(side: &Printed) -> bool {
    arrowhead(side).is_some_and(|corners| {
        let mid = corners.iter().fold(0.0, |sum, corner| sum + corner.1.get()) / 3.0;
        corners.iter().filter(|corner| corner.1.get() < mid).count() == 1
    })
}

/// Whether a start mark stands at the seam, and which way its arrow points. Anywhere else it would begin the round in
/// the midst of the symbols.
fn strip_start(sides: &[&Printed], lap: f64) -> Hinted<(bool, Option<Direction>)> {
    let last = sides.len().saturating_sub(1);
    for (index, side) in sides.iter().enumerate() {
        let Some(x) = thick_line(side) else { continue };
        let seam = (index == 0 && x.get() < lap / 2.0)
            || (index == last && (side.size.w.get() - lap - x.get()).abs() < lap / 2.0);
        if !seam {
            return Err(Trouble::new("the start mark does not stand at the seam of the strip"));
        }
        return Ok((true, way(side)));
    }
    Ok((false, None))
}
