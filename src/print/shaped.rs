//! Text in a shape: line widths follow the outline, and the largest size that fits is taken.

use serde::Serialize;

use super::fonts::{Fonts, Reach, Style};
use super::spans::{SpanData, Unbroken, unbroken, width};
use crate::face::{Align, Role, TextRun};
use crate::script::Paragraph;
use crate::units::{Mm, Pt, Rect};

/// Millimetres between the rows in which a shape is measured: finer than any printer's cut.
const ROW: f64 = 0.25;
/// Sizes are tried on a grid of a quarter point, as for text in a rectangle.
const STEP: f64 = 0.25;
/// Widths are reckoned without kerning, which may widen a line by a hair.
const KERNING: f64 = 1.01;

/// A run set in a shape: its size, and its lines by paragraph. Lengths in millimetres from the run's rectangle.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct Shaped {
    /// Type size in points.
    pub(super) size: f64,
    /// From the top of the first capitals to the last baseline.
    pub(super) height: f64,
    /// The widest room that a line has.
    pub(super) width: f64,
    /// Whether it leaves the shape even at the least size.
    pub(super) overflows: bool,
    paragraphs: Vec<Block>,
}

/// A paragraph: where the capitals of its first line begin, and its lines.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct Block {
    y: f64,
    lines: Vec<Line>,
}

/// A line: the room that the shape leaves it, and its text.
#[derive(Clone, Debug, PartialEq, Serialize)]
struct Line {
    x: f64,
    w: f64,
    spans: Vec<SpanData>,
}

/// A part of a line that no break divides, its width in parts of the type size, and the space before it.
struct Part {
    spans: Vec<SpanData>,
    width: f64,
    space: f64,
    /// The author ended the line here.
    last: bool,
}

/// All that a size is tried with.
struct Task<'a> {
    rows: Vec<(f64, f64)>,
    height: f64,
    /// The parts of all paragraphs, one after another, each with its paragraph's number.
    parts: Vec<(usize, Part)>,
    paragraphs: usize,
    reach: Reach,
    cap: f64,
    pitch: f64,
    gap: f64,
    run: &'a TextRun,
}

/// Sets a run into its shape; none if it has no shape or no words.
pub(super) fn shaped(fonts: &Fonts, run: &TextRun, reach: Reach, leading: f64) -> Option<Shaped> {
    let shape = run.within.as_ref()?;
    let texts = run.text.paragraphs.iter().map(|paragraph| parts(fonts, run.role, paragraph));
    let texts: Vec<Vec<Part>> = texts.filter(|parts| !parts.is_empty()).collect();
    if texts.is_empty() {
        return None;
    }
    let cap = fonts.cap_height(run.role);
    let task = Task {
        rows: rows(shape, run.rect),
        height: run.rect.h.get(),
        paragraphs: texts.len(),
        parts: texts.into_iter().enumerate().flat_map(|(n, parts)| parts.into_iter().map(move |p| (n, p))).collect(),
        reach,
        cap,
        pitch: cap + leading,
        gap: super::PARAGRAPH_GAP,
        run,
    };
    let least = run.least.min(run.most).get().max(1.0);
    let most = run.most.get().max(least);
    // Sizes are on the grid from the least up, and the greatest; they differ by some points, so steps are few.
    let mut size = most;
    loop {
        if let Some(blocks) = task.at(size) {
            return Some(task.done(size, blocks, false));
        }
        if size <= least {
            return Some(task.over(least));
        }
        size = (least + ((size - least) / STEP).ceil() * STEP - STEP).max(least);
    }
}

impl Task<'_> {
    /// The lines at a size; none if they do not fit.
    fn at(&self, size: f64) -> Option<Vec<Block>> {
        let widest = self.rows.iter().map(|(l, r)| r - l).fold(0.1, f64::max);
        let long: f64 = self.parts.iter().map(|(_, part)| part.space + part.width).sum();
        let least = whole(mm(size * long) / widest).max(self.paragraphs);
        let most = whole((self.height / mm(size * self.pitch)).ceil());
        (least..=most).find_map(|lines| self.fill(size, lines))
    }

    /// Fills exactly so many lines, stacked about the middle of the rectangle, each line as full of its room as the
    /// others: the breaks with the least sum of squares of what stays empty, found line by line.
    fn fill(&self, size: f64, lines: usize) -> Option<Vec<Block>> {
        let (above, below) = (mm(size * self.reach.above), mm(size * self.reach.below));
        let (cap, pitch, gap) = (mm(size * self.cap), mm(size * self.pitch), mm(size * self.gap));
        let height = cap + count(lines.max(1) - 1) * pitch + count(self.paragraphs - 1) * gap;
        if above + height + below > self.height {
            return None;
        }
        let top = above.max(((self.height - height) / 2.0).min(self.height - height - below));
        let capital = |line: usize, paragraph: usize| top + count(line) * pitch + count(paragraph) * gap;
        // By line: for each number of parts set so far, the least cost and where the line before ended.
        let mut table: Vec<Vec<Option<(f64, usize)>>> = Vec::with_capacity(lines + 1);
        let mut row = vec![None; self.parts.len() + 1];
        if let Some(first) = row.first_mut() {
            *first = Some((0.0, 0));
        }
        table.push(row);
        for line in 0..lines {
            let mut next: Vec<Option<(f64, usize)>> = vec![None; self.parts.len() + 1];
            for (from, cost) in table.last()?.iter().enumerate() {
                let (Some((cost, _)), Some((paragraph, _))) = (cost, self.parts.get(from)) else { continue };
                let y = capital(line, *paragraph);
                let (_, room) = self.room(y - above, y + cap + below, size);
                self.ends(from, room / mm(size), |to, empty| {
                    let cost = cost + empty * empty;
                    if let Some(slot) = next.get_mut(to)
                        && slot.is_none_or(|(known, _)| cost < known)
                    {
                        *slot = Some((cost, from));
                    }
                });
            }
            table.push(next);
        }
        let mut to = self.parts.len();
        let mut spans = Vec::with_capacity(lines);
        for row in table.iter().skip(1).rev() {
            let (_, from) = (*row.get(to)?)?;
            spans.push((from, to));
            to = from;
        }
        let mut blocks: Vec<Block> = Vec::new();
        for (line, (from, to)) in spans.into_iter().rev().enumerate() {
            let parts = self.parts.get(from..to)?;
            let paragraph = parts.first()?.0;
            let y = capital(line, paragraph);
            let (x, w) = self.room(y - above, y + cap + below, size);
            if blocks.len() <= paragraph {
                blocks.push(Block { y, lines: Vec::new() });
            }
            blocks.last_mut()?.lines.push(Line { x, w, spans: joined(parts) });
        }
        Some(blocks)
    }

    /// Every place where a line that begins with the part `from` may end, and the share of its room that it leaves
    /// empty. The last line of a paragraph that is not centred may be as short as it likes.
    fn ends(&self, from: usize, width: f64, mut end: impl FnMut(usize, f64)) {
        let Some((paragraph, _)) = self.parts.get(from) else { return };
        let mut used = 0.0;
        for (to, (of, part)) in self.parts.iter().enumerate().skip(from) {
            if of != paragraph {
                return;
            }
            used += if to == from { part.width } else { part.space + part.width };
            if used * KERNING > width {
                return;
            }
            let closes = self.parts.get(to + 1).is_none_or(|(next, _)| next != paragraph) || part.last;
            let free = closes && self.run.align != Align::Centre;
            end(to + 1, if free { 0.0 } else { 1.0 - used / width.max(0.001) });
            if part.last {
                return;
            }
        }
    }

    /// The room of a line whose ink reaches from `top` to `bottom`: its left end and its width.
    fn room(&self, top: f64, bottom: f64, size: f64) -> (f64, f64) {
        let (first, last) = (whole((top / ROW).floor()), whole((bottom / ROW).ceil()));
        let (mut left, mut right) = (0.0_f64, f64::MAX);
        for row in first..=last {
            let (l, r) = self.rows.get(row).copied().unwrap_or((0.0, 0.0));
            (left, right) = (left.max(l), right.min(r));
        }
        left += mm(size * self.reach.left.max(0.0));
        right -= mm(size * self.reach.right.max(0.0));
        (left, (right - left).max(0.0))
    }

    /// What does not fit, at its least size: a part to a line at worst, in the widest room that there is.
    fn over(&self, size: f64) -> Shaped {
        let widest = self.rows.iter().map(|(l, r)| r - l).fold(0.0, f64::max);
        let x = (self.run.rect.w.get() - widest) / 2.0;
        let mut y = mm(size * self.reach.above);
        let mut blocks: Vec<Block> = Vec::new();
        let mut from = 0;
        while let Some((paragraph, _)) = self.parts.get(from) {
            let mut to = from + 1;
            self.ends(from, widest / mm(size), |end, _| to = end);
            if blocks.len() <= *paragraph {
                y += if blocks.is_empty() { 0.0 } else { mm(size * self.gap) };
                blocks.push(Block { y, lines: Vec::new() });
            }
            if let (Some(block), Some(parts)) = (blocks.last_mut(), self.parts.get(from..to)) {
                block.lines.push(Line { x, w: widest, spans: joined(parts) });
            }
            y += mm(size * self.pitch);
            from = to;
        }
        self.done(size, blocks, true)
    }

    fn done(&self, size: f64, paragraphs: Vec<Block>, overflows: bool) -> Shaped {
        let first = paragraphs.first().map_or(0.0, |block| block.y);
        let last = paragraphs.last().map_or(0.0, |b| b.y + count(b.lines.len().max(1) - 1) * mm(size * self.pitch));
        let width = paragraphs.iter().flat_map(|block| &block.lines).map(|line| line.w).fold(0.0, f64::max);
        Shaped { size, height: last - first + mm(size * self.cap), width, overflows, paragraphs }
    }
}

/// The text of a line.
fn joined(parts: &[(usize, Part)]) -> Vec<SpanData> {
    let mut spans: Vec<SpanData> = Vec::new();
    for (n, (_, part)) in parts.iter().enumerate() {
        if n > 0
            && part.space > 0.0
            && let Some(last) = spans.last_mut()
        {
            last.t.push(' ');
        }
        for span in &part.spans {
            match spans.last_mut() {
                Some(last) if last.like(span) => last.t.push_str(&span.t),
                _ => spans.push(span.clone()),
            }
        }
    }
    spans
}

/// The parts of a paragraph between which a line may end.
fn parts(fonts: &Fonts, role: Role, paragraph: &Paragraph) -> Vec<Part> {
    let space = |style: Option<Style>| style.map_or(0.0, |style| fonts.width(role, style, " "));
    let part = |part: Unbroken| Part {
        width: width(fonts, role, &part.spans),
        spans: part.spans,
        space: space(part.space),
        last: part.last,
    };
    unbroken(paragraph).into_iter().map(part).collect()
}

/// The widest stretch inside the shape in each row of the rectangle, from its left.
fn rows(shape: &[(Mm, Mm)], rect: Rect) -> Vec<(f64, f64)> {
    (0..=whole((rect.h.get() / ROW).ceil()))
        .map(|row| {
            // A hair off the grid, so that no row runs through a corner.
            let y = rect.y.get() + count(row) * ROW + 0.001;
            let mut cuts: Vec<f64> = Vec::new();
            for (k, from) in shape.iter().enumerate() {
                let to = shape.get(k + 1).or_else(|| shape.first()).unwrap_or(from);
                let ((x0, y0), (x1, y1)) = ((from.0.get(), from.1.get()), (to.0.get(), to.1.get()));
                if (y0 <= y) != (y1 <= y) {
                    cuts.push(x0 + (y - y0) / (y1 - y0) * (x1 - x0) - rect.x.get());
                }
            }
            cuts.sort_by(f64::total_cmp);
            let stretches = cuts.chunks_exact(2).filter_map(|pair| Some((*pair.first()?, *pair.last()?)));
            stretches.max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0))).unwrap_or((0.0, 0.0))
        })
        .collect()
}

fn mm(points: f64) -> f64 {
    Pt::new(points).to_mm().get()
}

#[expect(clippy::cast_precision_loss, reason = "lines and rows of a card are few")]
const fn count(n: usize) -> f64 {
    n as f64
}

/// A whole number that is not below nothing; what is no number is nothing.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
fn whole(value: f64) -> usize {
    value.clamp(0.0, 100_000.0) as usize
}
