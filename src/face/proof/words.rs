use super::{PrintedText, box_about};
use crate::units::{Mm, Pt, Rect};

/// Words on one line.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The words, single spaces between them.
    pub text: String,
    /// The box about their ink.
    pub rect: Rect,
    /// The size of the first.
    pub size: Pt,
    /// Degrees clockwise by which the line is turned.
    pub turn: f64,
    /// The height of its baseline: from the top for a line that is not turned.
    baseline: f64,
}

/// Lines above one another that read as one text.
#[derive(Clone, Debug, PartialEq)]
pub struct Block {
    /// The lines, first to last.
    pub lines: Vec<Line>,
    /// The box about them.
    pub rect: Rect,
}

impl Line {
    /// The height of its baseline, from the top for a line that is not turned.
    #[must_use]
    pub const fn baseline(&self) -> Mm {
        Mm::new(self.baseline)
    }
}

impl Block {
    /// The words, single spaces between them and between lines.
    #[must_use]
    pub fn text(&self) -> String {
        squeezed(&self.lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>().join(" "))
    }
}

/// Blanks further than this apart part words, in the size of the type.
const WORD_GAP: f64 = 0.2;
/// Text further than this apart stands in another column or cell, in the size of the type.
const COLUMN_GAP: f64 = 1.2;
/// Paragraphs of one text stand closer than this, in the size of the type.
const BLOCK_GAP: f64 = 1.5;

/// Where a text stands along its own direction, and across it, in millimetres.
fn along(text: &PrintedText) -> (f64, f64) {
    let (sin, cos) = text.turn.to_radians().sin_cos();
    let (x, y) = (text.x.get(), text.y.get());
    (x * cos + y * sin, y * cos - x * sin)
}

/// Texts as lines: those on one baseline that stand close together are one line. Sorted by turn, from the top down,
/// then from left to right.
#[must_use]
pub fn lines(texts: &[&PrintedText]) -> Vec<Line> {
    let mut sorted: Vec<(f64, f64, f64, &PrintedText)> = texts
        .iter()
        .map(|text| {
            let (at, across) = along(text);
            (text.turn, across, at, *text)
        })
        .collect();
    // A tenth of a millimetre across is one baseline.
    let baseline = |across: f64| (across * 10.0).round();
    sorted.sort_by(|a, b| {
        let key = |t: &(f64, f64, f64, &PrintedText)| (t.0.round(), baseline(t.1), t.2);
        let (a, b) = (key(a), key(b));
        a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)).then(a.2.total_cmp(&b.2))
    });
    let mut done: Vec<(Line, f64)> = Vec::new();
    for (turn, across, at, text) in sorted {
        let em = text.size.to_mm().get();
        let end = at + text.width.get();
        if let Some((line, right)) = done.last_mut()
            && (line.turn - turn).abs() < 1.0
            && (line.baseline - across).abs() < 0.15
            && at - *right < COLUMN_GAP * em.max(line.size.to_mm().get())
        {
            if at - *right > WORD_GAP * em {
                line.text.push(' ');
            }
            line.text.push_str(&text.text);
            line.rect = about(line.rect, text.rect);
            *right = end;
            continue;
        }
        let line = Line { text: text.text.clone(), rect: text.rect, size: text.size, turn, baseline: across };
        done.push((line, end));
    }
    done.into_iter().map(|(line, _)| Line { text: squeezed(&line.text), ..line }).collect()
}

/// Texts as blocks: lines of one size and turn, one close below the other and above or below part of it, are one
/// text. From the top down, then from left to right.
#[must_use]
pub fn blocks(texts: &[&PrintedText]) -> Vec<Block> {
    let mut done: Vec<Block> = Vec::new();
    for line in lines(texts) {
        let em = line.size.to_mm().get();
        let fits = |block: &&mut Block| {
            block.lines.last().is_some_and(|last| {
                let gap = line.baseline - last.baseline;
                let lying = line.turn.abs() < 1.0;
                let beside = line.rect.x < block.rect.right() && block.rect.x < line.rect.right();
                (last.turn - line.turn).abs() < 1.0
                    && (last.size.get() / line.size.get() - 1.0).abs() < 0.03
                    && gap > 0.0
                    && gap < (BLOCK_GAP + 1.0) * em
                    && (beside || !lying)
            })
        };
        match done.iter_mut().rev().find(fits) {
            Some(block) => {
                block.rect = about(block.rect, line.rect);
                block.lines.push(line);
            }
            None => done.push(Block { rect: line.rect, lines: vec![line] }),
        }
    }
    done.sort_by(|a, b| a.rect.y.get().total_cmp(&b.rect.y.get()).then(a.rect.x.get().total_cmp(&b.rect.x.get())));
    done
}

/// Text with single spaces between its words and none around it.
#[must_use]
pub fn squeezed(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn about(a: Rect, b: Rect) -> Rect {
    let corners = |r: Rect| [(r.x, r.y), (r.right(), r.bottom())];
    box_about(corners(a).into_iter().chain(corners(b))).unwrap_or(Rect { w: Mm::ZERO, ..a })
}
