//! The sign and the pointer card, read back from paper.

use super::{Cell, EQUAL_RULE, LETTERS_RULE, LINE_RULE, Pointer, Says, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Printed, PrintedText, lanes, middle};
use crate::mechanics::{Dressing, front};
use crate::units::{Mm, Rect};

/// A gap between letters that parts words, in the size of their type: narrower than a space with the narrowest
/// letters beside it, wider than the room left about a narrow letter.
const WORD_GAP: f64 = 0.52;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sign = front(printed, "sign")?;
    let (title, letters) = (cx.slot_on(sign, "sign", "title")?, cx.slot_on(sign, "sign", "letters")?);
    let top = title.bottom().min(letters.y);
    let lines = sign_lines(&sign.texts_in(Rect { y: top, h: letters.bottom() - top, ..letters }))?;
    let heading = sign.blocks_in(title).iter().map(Block::text).collect();
    let card = front(printed, "pointer")?;
    let body: Vec<String> = card.blocks_in(cx.slot_on(card, "landscape", "body")?).iter().map(Block::text).collect();
    Ok(View { heading, lines, pointer: pointer(&body.join(" ")) })
}

/// The sign's letters line by line, each with the digit that stands under it.
fn sign_lines(texts: &[&PrintedText]) -> Hinted<Vec<Vec<Cell>>> {
    let mut letters: Vec<(char, &PrintedText)> = Vec::new();
    let mut digits: Vec<(char, &PrintedText)> = Vec::new();
    for text in texts {
        let mut chars = text.text.trim().chars();
        let (Some(symbol), None) = (chars.next(), chars.next()) else {
            return Err(Trouble::new(format!("the sign has \"{}\" where one letter belongs", text.text)));
        };
        if symbol.is_ascii_digit() { digits.push((symbol, *text)) } else { letters.push((symbol, *text)) }
    }
    let size = letters.first().map_or(Mm::ZERO, |(_, text)| text.size.to_mm());
    let baselines = lanes(letters.iter().map(|(_, text)| text.y), size / 2.0);
    let mut lines: Vec<Vec<(Rect, Cell)>> = vec![Vec::new(); baselines.len()];
    for (letter, text) in letters {
        let near = baselines.iter().position(|y| (*y - text.y).get().abs() < size.get() / 2.0);
        if let Some(line) = near.and_then(|at| lines.get_mut(at)) {
            line.push((text.rect, Cell { letter, mark: None }));
        }
    }
    for (digit, text) in digits {
        let at = middle(text.rect);
        // The line just above, and in it the letter that the digit stands under.
        let above = baselines.iter().rposition(|y| *y < at.1).and_then(|line| lines.get_mut(line));
        let far = |rect: Rect| (middle(rect).0 - at.0).get().abs();
        let owner = above.and_then(|line| line.iter_mut().min_by(|a, b| far(a.0).total_cmp(&far(b.0))));
        let Some((rect, cell)) = owner else {
            return Err(Trouble::new(format!("the {digit} on the sign stands under no letter")));
        };
        if far(*rect) > (rect.w.get() / 2.0).max(text.size.to_mm().get() / 2.0) {
            return Err(Trouble::new(format!("the {digit} on the sign stands between letters")));
        }
        if cell.mark.replace(digit).is_some() {
            return Err(Trouble::new(format!("two digits stand under the {} of the sign", cell.letter)));
        }
    }
    Ok(lines.into_iter().map(|line| spaced(line, size)).collect())
}

/// A line's letters from left to right, with a space where the gap is that of one.
fn spaced(mut line: Vec<(Rect, Cell)>, size: Mm) -> Vec<Cell> {
    line.sort_by(|a, b| a.0.x.get().total_cmp(&b.0.x.get()));
    let mut cells: Vec<Cell> = Vec::new();
    let mut right: Option<Mm> = None;
    for (rect, cell) in line {
        if right.is_some_and(|right| rect.x - right > size * WORD_GAP) {
            cells.push(Cell { letter: ' ', mark: None });
        }
        right = Some(rect.right());
        cells.push(cell);
    }
    cells
}

/// What the card's words say: a list of letters or a line, then the rules.
fn pointer(words: &str) -> Pointer {
    let rules = [LETTERS_RULE, LINE_RULE, EQUAL_RULE];
    let end = rules.iter().filter_map(|rule| words.find(rule)).min().unwrap_or(words.len());
    let said = words.get(..end).unwrap_or_default().trim();
    let single = |word: &str| {
        let mut chars = word.trim().chars();
        chars.next().filter(|_| chars.next().is_none())
    };
    let letters: Option<Vec<char>> = said.split(',').map(single).collect();
    let says = match letters {
        Some(letters) if !words.contains(LINE_RULE) => Says::Letters(letters),
        _ => Says::Line(said.to_owned()),
    };
    let rule = words.contains(LETTERS_RULE) || words.contains(LINE_RULE);
    Pointer { says, rule, equal_rule: words.contains(EQUAL_RULE) }
}
