//! Which pieces come out of a mechanic: of its sample, laid out in every built-in theme.

use std::collections::BTreeMap;
use std::io::Write;

use crate::diag::Hinted;
use crate::face::{Audience, Piece, Stock};
use crate::mechanics::AnyMechanic;
use crate::mechanics::sample::sample;
use crate::theme::{self, Palette};

/// From the least to the most of something.
#[derive(Clone, Copy)]
struct Span(f64, f64);

impl Span {
    fn with(self, value: f64) -> Self {
        Self(self.0.min(value), self.1.max(value))
    }

    /// In whole numbers: "105", or "105 to 120".
    fn words(self) -> String {
        let (least, most) = (format!("{:.0}", self.0), format!("{:.0}", self.1));
        if least == most { least } else { format!("{least} to {most}") }
    }
}

/// Pieces of one kind.
struct Kind {
    part: String,
    audience: Audience,
    stock: Stock,
    backs: bool,
    count: Span,
    w: Span,
    h: Span,
}

impl Kind {
    fn takes(&self, piece: &Piece) -> bool {
        self.part == piece.part && self.audience == piece.audience && self.stock == piece.stock
    }
}

/// Writes a line for each kind of piece: how many there are, their size, what they are printed on and whose they are.
///
/// # Errors
/// When a built-in theme lacks what a piece stands on, or the words cannot be written.
pub(super) fn write(mechanic: &dyn AnyMechanic, out: &mut dyn Write) -> super::outcome::Outcome {
    let kinds = kinds(mechanic)?;
    if !kinds.is_empty() {
        writeln!(out, "\nPieces of a sample, over all built-in themes (the setup may change their number and size):")?;
    }
    for kind in &kinds {
        let many = kind.count.1 > 1.0;
        let count = if many { format!("{} pieces, each ", kind.count.words()) } else { String::new() };
        let (w, h) = (kind.w.words(), kind.h.words());
        let paper = match kind.stock {
            Stock::Plain => "plain paper",
            Stock::Card => "card paper",
            Stock::Film => "clear film",
        };
        let backs = if kind.backs { ", on both sides" } else { "" };
        let whose = if kind.audience == Audience::Host { "the host" } else { "guests" };
        writeln!(out, "  {:<12} {count}{w} × {h} mm, {paper}{backs}, for {whose}", kind.part)?;
    }
    Ok(super::outcome::CLEAN)
}

/// The pieces of the samples, those for guests first.
fn kinds(mechanic: &dyn AnyMechanic) -> Hinted<Vec<Kind>> {
    let mut kinds: Vec<Kind> = Vec::new();
    for id in theme::builtin_ids() {
        let theme = theme::load_builtin(&id)?;
        let palette = Palette::new(&theme.theme.palette, &BTreeMap::new())?;
        let pieces = sample(mechanic, &theme, &palette)?.pieces;
        for piece in &pieces {
            let (w, h) = (piece.front.size.w.get(), piece.front.size.h.get());
            let alike = pieces.iter().filter(|other| {
                other.part == piece.part && other.audience == piece.audience && other.stock == piece.stock
            });
            #[expect(clippy::cast_precision_loss, reason = "a handful of pieces")]
            let count = alike.count() as f64;
            match kinds.iter_mut().find(|kind| kind.takes(piece)) {
                Some(kind) => {
                    (kind.count, kind.w, kind.h) = (kind.count.with(count), kind.w.with(w), kind.h.with(h));
                    kind.backs |= piece.back.is_some();
                }
                None => kinds.push(Kind {
                    part: piece.part.clone(),
                    audience: piece.audience,
                    stock: piece.stock,
                    backs: piece.back.is_some(),
                    count: Span(count, count),
                    w: Span(w, w),
                    h: Span(h, h),
                }),
            }
        }
    }
    kinds.sort_by_key(|kind| kind.audience);
    Ok(kinds)
}
