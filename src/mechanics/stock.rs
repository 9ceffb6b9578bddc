//! What the pieces of a puzzle are printed on.

use crate::face::{Audience, Piece, Stock};
use crate::kit::material::PrepStep;

/// Of the pieces of a puzzle, by what its preparation takes: the heavier paper where it takes two.
fn of_puzzle(prep: &[PrepStep]) -> Stock {
    let takes = |paper: &str| prep.iter().flat_map(|step| &step.needs).any(|need| need.material == paper);
    if takes("plain-paper") && !takes("card-paper") { Stock::Plain } else { Stock::Card }
}

/// Gives the pieces of a puzzle what they are printed on: film where the mechanic says so, plain paper for what only the
/// host uses, and else the paper that the preparation takes.
pub fn stock(pieces: &mut [Piece], prep: &[PrepStep]) {
    let usual = of_puzzle(prep);
    for piece in pieces {
        piece.stock = match (piece.stock, piece.audience) {
            (Stock::Film, _) => Stock::Film,
            (_, Audience::Host) => Stock::Plain,
            _ => usual,
        };
    }
}
