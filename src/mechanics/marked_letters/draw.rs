//! The sign and the pointer card.

use super::{Says, View};
use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::{Face, Piece, Role, TextRun};
use crate::mechanics::Dressing;
use crate::script::{Paragraph, Rich, Span};
use crate::units::{Mm, Pt, Rect, Size};

/// What `slot-letters` of the frame `sign` measures in a usual theme; only the choice where to wrap rests on it.
const USUAL_SLOT: Size = Size::mm(160.0, 26.0);
/// Height of the row of small digits under a line of letters, digits of 9 to 10 points; and in large print, where what hangs
/// on a wall is read from farther off, digits of 16 to 20.
const MARK_ROW: (Mm, Mm) = (Mm::new(4.0), Mm::new(8.0));
/// Room between a row of digits and the next line of letters: digits must look like those of the line above.
const BETWEEN: Mm = Mm::new(2.6);
/// White at both ends of a line together, in the size of its type: no letter stands at the frame.
const BESIDE: f64 = 0.8;
/// Height of a line of letters, in the size of its type: room for capitals in any lettering.
const LINE: f64 = 1.2;
/// Most lines of a sign.
const LINES: usize = 4;
/// Least size of the letters and of the digits under them (common practice for cards, no source).
const LEAST: Pt = Pt::new(9.0);
/// Greatest size of the letters.
const MOST: Pt = Pt::new(48.0);

/// The share of the pointer card that its letters or its line take, above the rules.
const SAID: f64 = 0.5;

/// Width kept for a letter, in the size of its type. Generous, so that no lettering has to shrink one letter alone.
fn width(letter: char) -> f64 {
    match letter {
        'I' | '.' | ',' | '\'' => 0.5,
        '-' | ' ' => 0.55,
        'M' | 'W' | '&' => 1.05,
        _ => 0.82,
    }
}

fn line_width(line: impl Iterator<Item = char>) -> f64 {
    line.map(width).sum()
}

/// The size of type at which lines of such widths fill a slot.
fn type_size(slot: Size, lines: &[f64], mark_row: Mm) -> Mm {
    let widest = lines.iter().copied().fold(0.0, f64::max);
    #[expect(clippy::cast_precision_loss, reason = "a handful of lines")]
    let count = lines.len() as f64;
    let by_width = slot.w / widest;
    let by_height = ((slot.h - BETWEEN * (count - 1.0)) / count - mark_row) / LINE;
    by_width.min(by_height).min(MOST.to_mm())
}

/// Breaks words into the lines that allow the largest letters; of equals, the fewest lines.
pub(super) fn wrap(words: &[&str]) -> Vec<String> {
    let mut best: Option<(Mm, Vec<String>)> = None;
    for count in 1..=LINES.min(words.len()) {
        let lines = break_into(words, count);
        let widths: Vec<f64> = lines.iter().map(|line| line_width(line.chars())).collect();
        let size = type_size(USUAL_SLOT, &widths, MARK_ROW.0);
        if best.as_ref().is_none_or(|(so_far, _)| size > *so_far) {
            best = Some((size, lines));
        }
    }
    best.map(|(_, lines)| lines).unwrap_or_default()
}

/// Words in at most `count` lines whose widest is as narrow as can be: widths are tried from the widest word up.
fn break_into(words: &[&str], count: usize) -> Vec<String> {
    let spans = |limit: f64| {
        let mut lines: Vec<String> = Vec::new();
        for word in words {
            match lines.last_mut() {
                Some(line) if line_width(line.chars()) + width(' ') + line_width(word.chars()) <= limit => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push((*word).to_owned()),
            }
        }
        lines
    };
    let mut limit = words.iter().map(|word| line_width(word.chars())).fold(0.0, f64::max);
    let whole = line_width(words.join(" ").chars()) + 0.1;
    while limit < whole {
        let lines = spans(limit);
        if lines.len() <= count {
            return lines;
        }
        limit += 0.25;
    }
    spans(whole)
}

pub(super) fn sign(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let frame = cx.frame("sign")?;
    let mut slot = cx.slot(&frame, "sign", "letters")?;
    if view.heading.is_empty() {
        // Nothing stands above: the letters begin where a heading would end.
        let top = cx.slot(&frame, "sign", "title")?.bottom().min(slot.y);
        slot = Rect { y: top, h: slot.bottom() - top, ..slot };
    }
    let words: Vec<String> = view.lines.iter().map(|line| line.iter().map(|cell| cell.letter).collect()).collect();
    let alt = format!("A sign: {}. Small digits stand under some of its letters.", words.join(" "));
    let mut face = Face::on(&frame, alt);
    cx.title(&mut face, &frame, "sign", &view.heading)?;

    let widths: Vec<f64> = words.iter().map(|line| line_width(line.chars())).collect();
    let (mark_row, most) = if cx.large() { (MARK_ROW.1, Pt::new(20.0)) } else { (MARK_ROW.0, Pt::new(10.0)) };
    // In large print room is dear.
    let beside = if cx.large() { 0.0 } else { BESIDE };
    let filled: Vec<f64> = widths.iter().map(|width| width + beside).collect();
    let size = type_size(Size { w: slot.w, h: slot.h }, &filled, mark_row);
    if size.to_pt() < LEAST {
        return Err(Trouble::new("the sign's letters would be smaller than 9 points")
            .hint("shorten the sign, or draw a larger `slot-letters` into the theme's frame `sign`"));
    }
    let row = size * LINE + mark_row + BETWEEN;
    #[expect(clippy::cast_precision_loss, reason = "a handful of lines")]
    let mut y = slot.y + (slot.h + BETWEEN - row * widths.len() as f64) / 2.0;
    for (line, width_of_line) in view.lines.iter().zip(&widths) {
        let mut x = slot.x + (slot.w - size * *width_of_line) / 2.0;
        for cell in line {
            let w = size * width(cell.letter);
            if cell.letter != ' ' {
                let rect = Rect { x, y, w, h: size * LINE };
                face.text(run(cx, rect, Role::Display, cell.letter, size.to_pt()));
            }
            if let Some(mark) = cell.mark {
                let w = w.max(mark_row * 0.8);
                let rect = Rect { x: x + (size * width(cell.letter) - w) / 2.0, y: y + size * LINE, w, h: mark_row };
                face.text(run(cx, rect, Role::Code, mark, most));
            }
            x += w;
        }
        y += row;
    }
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece("sign", "", face))
}

fn run(cx: &Dressing<'_>, rect: Rect, role: Role, symbol: char, most: Pt) -> TextRun {
    let text = Rich::plain(symbol.to_string());
    TextRun::new(rect, role, text, most, cx.colour("ink"), cx.at(PuzzleField::Setup)).at_least(LEAST)
}

pub(super) fn pointer(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let (says, spoken) = match &view.pointer.says {
        Says::Letters(letters) => (letters.iter().map(char::to_string).collect::<Vec<_>>().join(", "), false),
        Says::Line(line) => (line.clone(), true),
    };
    let rules = view.rules();
    // The author's line stands exactly as written, never read as markup.
    let paragraph = |text: &str, emph, strong| Paragraph {
        spans: vec![Span { text: text.to_owned(), emph, strong, end_of_line: false }],
    };
    let title = cx.name("pointer-title", "Read these letters");
    let alt = format!("A card, {title}: {says}. {}", rules.join(" "));
    let frame = cx.frame("landscape")?;
    let mut face = Face::on(&frame, alt);
    cx.title(&mut face, &frame, "landscape", title)?;
    let body = cx.slot(&frame, "landscape", "body")?;
    let said = Rich { paragraphs: vec![paragraph(&says, spoken, !spoken)] };
    let told = Rich { paragraphs: rules.iter().map(|rule| paragraph(rule, false, false)).collect() };
    let head = if told.is_empty() { body } else { Rect { h: body.h * SAID, ..body } };
    let most = Pt::new(if spoken { 24.0 } else { 44.0 });
    face.text(TextRun::new(head, Role::Text, said, most, cx.colour("ink"), cx.at(PuzzleField::Setup)));
    if !told.is_empty() {
        let below = Rect { y: head.bottom(), h: body.bottom() - head.bottom(), ..body };
        face.text(TextRun::new(below, Role::Text, told, Pt::new(15.0), cx.colour("ink"), cx.at(PuzzleField::Setup)));
    }
    cx.draw_mark(&mut face, &frame)?;
    Ok(cx.piece("pointer", "", face))
}
