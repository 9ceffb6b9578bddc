//! Fixtures of the checks of print.

use std::sync::Arc;

use inklatch::checks::SetPiece;
use inklatch::diag::Anchor;
use inklatch::face::{Audience, Face, Piece, Role, Stock, TextRun};
use inklatch::party::Party;
use inklatch::script::Rich;
use inklatch::theme::Colour;
use inklatch::units::{Pt, Rect, Size};

use super::{Row, computed, set};

/// A PNG of one grey pixel, as a picture of `pixels` across that fills a square.
fn photo(pixels: u32) -> Arc<str> {
    const DOT: &str =
        "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";
    Arc::from(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{pixels}\" height=\"{pixels}\"><image width=\"{pixels}\" \
         height=\"{pixels}\" href=\"data:image/png;base64,{DOT}\"/></svg>"
    ))
}

fn piece(front: Face) -> Piece {
    Piece {
        id: "poster".into(),
        part: String::new(),
        label: "Poster".into(),
        audience: Audience::Players,
        front,
        back: None,
        copies: 1,
        measured: false,
        stock: Stock::Card,
        on_a_thing: false,
        large: false,
        group: "notes".into(),
    }
}

fn sized(w: f64, h: f64) -> Piece {
    piece(Face::new(Size::mm(w, h), "a poster"))
}

/// A card with a picture at this width.
fn pictured(w: f64) -> Piece {
    let mut face = Face::new(Size::mm(100.0, 100.0), "a poster");
    face.art(photo(1), Rect::mm(0.0, 0.0, w, w), "");
    piece(face)
}

/// A card with words this far from its left edge.
fn worded(x: f64) -> Piece {
    let mut face = Face::new(Size::mm(100.0, 60.0), "a poster");
    let rect = Rect::mm(x, 10.0, 80.0, 20.0);
    face.text(TextRun::new(rect, Role::Text, Rich::plain("Look up"), Pt::new(12.0), Colour::BLACK, Anchor::Letter));
    piece(face)
}

fn inky(party: &mut Party, pieces: &mut Vec<SetPiece>, share: f64) {
    // The only piece whose ink is known, so that it alone counts.
    party.pieces.push(sized(90.0, 60.0));
    pieces.push(SetPiece { piece: "poster".into(), ink: Some(share), ..set(12.0, false, Audience::Players) });
}

pub fn print() -> Vec<Row> {
    vec![
        computed(
            "art-too-coarse",
            "a picture on \"Poster\" is printed with 1 pixels to the inch, fewer than 150",
            |party, _| party.pieces.push(pictured(25.4)),
            |party, _| party.pieces.push(pictured(0.16)),
        ),
        computed(
            "piece-off-sheet",
            "too large for one letter sheet, turned or not",
            // 205 mm are too wide for A4 and for Letter, and 270 mm are too high for Letter alone.
            |party, _| party.pieces.push(sized(205.0, 205.0)),
            |party, _| party.pieces.push(Piece { large: true, ..sized(205.0, 205.0) }),
        ),
        computed(
            "thin-margin",
            "\"Look up\" on \"Poster\" stands 1.5 mm from the cut edge",
            |party, _| party.pieces.push(worded(1.5)),
            |party, _| party.pieces.push(worded(2.5)),
        ),
        computed(
            "scale-critical",
            "\"Poster\" (70 × 70 mm) must come out at true size",
            |party, _| party.pieces.push(Piece { measured: true, on_a_thing: true, ..sized(70.0, 70.0) }),
            // Pieces that only go with one another shrink together.
            |party, _| party.pieces.push(Piece { measured: true, ..sized(70.0, 70.0) }),
        ),
        computed(
            "much-ink",
            "pictures cover 45 % of the pieces with ink; most on \"Poster\" 45 %",
            |party, pieces| inky(party, pieces, 0.45),
            |party, pieces| inky(party, pieces, 0.12),
        ),
    ]
}
