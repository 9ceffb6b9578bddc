//! How the hint tokens are made: cut, folded, glued, closed, in the order in which it is done.

use super::{CUT_MINUTES, count};
use crate::diag::{Level, Step};
use crate::kit::material::{Need, PrepStep};
use crate::kit::{Kit, TokenMake};

/// What a shopping list calls them.
pub(crate) const CALLED: &str = "the hint tokens";
/// What closes a flap.
pub(crate) const STICKER: &str = "sticker";
/// Minutes for cutting one strip out straight, folding and gluing it, and for folding its flap and closing it (estimates;
/// common practice, no source).
const STRIP: f64 = 0.4;
const GLUE: f64 = 0.8;
const CLOSE: f64 = 0.4;
/// Minutes that glued paper lies under a book (estimate; the maker's label decides).
const DRY: f64 = 15.0;

/// How many tokens the kit has: one for each step of each puzzle.
pub(super) fn tokens(kit: &Kit) -> usize {
    kit.puzzles.len() * Step::ALL.len()
}

/// How many of them are closed before the party: those that lie open from the start are not.
fn closed(kit: &Kit, level: Level) -> usize {
    let open = usize::from(kit.levels.of(level).open_steps);
    kit.puzzles.len() * Step::ALL.len().saturating_sub(open)
}

/// The steps that make the tokens for a level, one after another; none where there are none.
pub(super) fn steps(kit: &Kit, level: Level) -> Vec<PrepStep> {
    let number = tokens(kit);
    if number == 0 {
        return Vec::new();
    }
    let need = |material| Need { material, amount: 1.0 };
    let step = |key, what: String, needs: Vec<Need>, each: f64, wait: f64, after: Vec<&'static str>| {
        let hands = count(number) * each;
        PrepStep { key, what, needs, hands, wait, after }
    };
    let glued = |what: String, after: Vec<&'static str>| {
        step("glued", what, vec![need("scissors"), need("glue")], STRIP + GLUE, DRY, after)
    };
    match kit.making.tokens {
        TokenMake::Plain => {
            let what = format!("Hint tokens: cut all {number} out round their shape.");
            vec![step("cut", what, vec![need("scissors")], CUT_MINUTES, 0.0, Vec::new())]
        }
        TokenMake::TwoSided => {
            let what = format!(
                "Hint tokens: their sheets are printed on both sides. Cut all {number} out round the shape on the side with \
                 the words; the picture on the other side may lie up to 5 mm off."
            );
            vec![step("cut", what, vec![need("scissors")], CUT_MINUTES, 0.0, Vec::new())]
        }
        TokenMake::FoldOver => {
            let first = format!(
                "Hint tokens: cut the {number} strips out whole, not yet round the shape. Fold each back on the dashed line, \
                 so that words and picture look outwards, and glue the halves together. Lay them under a book to dry."
            );
            let then = format!(
                "Hint tokens, when they are dry: cut all {number} out round the shape on the side with the words, through \
                 both layers."
            );
            let cut = step("cut", then, vec![need("scissors")], CUT_MINUTES, 0.0, vec!["glued"]);
            vec![glued(first, Vec::new()), cut]
        }
        TokenMake::Flap => {
            let first = format!(
                "Hint tokens: cut the {number} strips out whole, with their flaps. Fold the picture back on the first dashed \
                 line, so that words and picture look outwards, and glue these two together; no glue on the flap. Lay them \
                 under a book to dry."
            );
            let closed = closed(kit, level);
            let (which, open) = match closed {
                0 => return vec![glued(first, Vec::new())],
                all if all == number => ("each flap".to_owned(), ""),
                some => (format!("each flap of the {some} that you keep"), " The others lie open from the start."),
            };
            let then = format!(
                "Hint tokens, when they are dry: fold {which} up over the words on the second dashed line and close it with \
                 a sticker.{open}"
            );
            let needs = vec![Need { material: STICKER, amount: count(closed) }];
            let close =
                PrepStep { hands: count(closed) * CLOSE, ..step("closed", then, needs, CLOSE, 0.0, vec!["glued"]) };
            vec![glued(first, Vec::new()), close]
        }
    }
}

/// The same for a shopping list: what they are called, with what their steps take.
pub(super) fn needs(kit: &Kit, level: Level) -> impl Iterator<Item = (&'static str, Need)> {
    steps(kit, level).into_iter().flat_map(|step| step.needs).map(|need| (CALLED, need))
}
