use crate::diag::{Anchor, Hinted};
use crate::face::{Align, Audience, Face, Outline, Piece, Role, TextRun, Valign};
use crate::party::Party;
use crate::print::{Press, Raster};
use crate::script::Rich;
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// Pages of pairs of pieces: before on the left, after on the right.
const PAGE: (f64, f64) = (210.0, 240.0);
/// Room for one piece, in millimetres; larger pieces are shown smaller.
const CELL: (f64, f64) = (90.0, 62.0);
/// Air around a cell, and the height of the line below it.
const AIR: (f64, f64) = (6.0, 6.0);
/// Pixels to the millimetre: small type can still be read on a screen.
const SCALE: f64 = 5.0;

/// One kit in its theme, with the press that sets it.
#[derive(Clone, Copy)]
pub struct Side<'a> {
    /// What stands above it: "Midwinter".
    pub name: &'a str,
    /// The kit in its theme.
    pub party: &'a Party,
    /// Its press.
    pub press: &'a Press,
}

/// Each piece before and after, side by side, as pictures of pages. Of the hint tokens the first stands for all.
///
/// # Errors
/// When a piece cannot be set.
pub fn side_by_side(before: Side<'_>, after: Side<'_>) -> Hinted<Vec<Raster>> {
    let pairs = pairs(before.party, after.party);
    let (w, row) = (Mm::new(PAGE.0), CELL.1 + 2.0 * AIR.1);
    let head = 14.0;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few rows")]
    let rows = ((PAGE.1 - head) / row).floor().max(1.0) as usize;
    let column = |side: usize| Mm::new(if side == 0 { AIR.0 } else { PAGE.0 - AIR.0 - CELL.0 });
    let mut pages = Vec::new();
    for chunk in pairs.chunks(rows) {
        let mut page = Face::new(Size { w, h: Mm::new(PAGE.1) }, "");
        page.art(ground(page.size, "#E9ECEF").into(), Rect::of(page.size), "");
        for (side, shown) in [before, after].iter().enumerate() {
            let rect = Rect { x: column(side), y: Mm::new(4.0), w: Mm::new(CELL.0), h: Mm::new(8.0) };
            page.text(line(rect, shown.name, 14.0));
        }
        let mut y = head;
        for (old, new) in chunk {
            for (side, (piece, shown)) in [(old, before), (new, after)].into_iter().enumerate() {
                let cell = Rect { x: column(side), y: Mm::new(y), w: Mm::new(CELL.0), h: Mm::new(CELL.1) };
                let Some(piece) = piece else { continue };
                let rect = within(cell, piece.front.size);
                if piece.front.outline == Outline::Rect {
                    page.art(ground(piece.front.size, "#FFFFFF").into(), rect, "");
                }
                page.art(shown.press.face(&piece.front)?.svg().into(), rect, "");
                let below = Rect { y: cell.bottom() + Mm::new(1.0), h: Mm::new(AIR.1), ..cell };
                page.text(line(below, &piece.label, 9.0));
            }
            y += row;
        }
        pages.push(after.press.face(&page)?.raster(SCALE)?);
    }
    Ok(pages)
}

/// A plain ground.
fn ground(size: Size, colour: &str) -> String {
    let (w, h) = (size.w.get(), size.h.get());
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">\
         <rect width=\"{w}\" height=\"{h}\" fill=\"{colour}\"/></svg>"
    )
}

fn line(rect: Rect, text: &str, size: f64) -> TextRun {
    let run = TextRun::new(
        rect,
        Role::Code,
        Rich::plain(text),
        Pt::new(size),
        Colour { r: 0x22, g: 0x26, b: 0x2B },
        Anchor::Kit,
    );
    run.aligned(Align::Centre, Valign::Middle).at_least(Pt::new(size / 2.0))
}

/// The largest rectangle of a size's shape in the middle of a cell, never larger than the size.
fn within(cell: Rect, size: Size) -> Rect {
    let scale = (cell.w.get() / size.w.get()).min(cell.h.get() / size.h.get()).min(1.0);
    let (w, h) = (size.w * scale, size.h * scale);
    Rect { x: cell.x + (cell.w - w) / 2.0, y: cell.y + (cell.h - h) / 2.0, w, h }
}

/// The pieces of two parties with the same ids, in the order of the first; then those that only the second has. Of the
/// hint tokens the first stands for all.
#[must_use]
pub fn pairs<'a>(before: &'a Party, after: &'a Party) -> Vec<(Option<&'a Piece>, Option<&'a Piece>)> {
    let shown = |party: &'a Party| -> Vec<&'a Piece> {
        let mut hints = 0;
        let counts = |piece: &&&Piece| {
            hints += usize::from(piece.audience == Audience::Hints);
            piece.audience != Audience::Hints || hints == 1
        };
        party.pieces.iter().collect::<Vec<_>>().iter().filter(counts).copied().collect()
    };
    let (old, new) = (shown(before), shown(after));
    let mut pairs: Vec<(Option<&Piece>, Option<&Piece>)> =
        old.iter().map(|piece| (Some(*piece), new.iter().find(|other| other.id == piece.id).copied())).collect();
    pairs.extend(
        new.iter().filter(|piece| !old.iter().any(|other| other.id == piece.id)).map(|piece| (None, Some(*piece))),
    );
    pairs
}
