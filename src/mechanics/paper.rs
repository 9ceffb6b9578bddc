//! What puzzles that are solved with a pencil on paper share: preparation, and how their sheets are drawn.

use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::proof::{Printed, PrintedText, squeezed};
use crate::face::{Align, Face, Role, TextRun, Valign, mm};
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::script::{Paragraph, Rich, Span};
use crate::theme::{Colour, LARGE_PRINT};
use crate::units::{Mm, Pt, Rect, Size};

/// Least size of symbols and words on a card (common practice, no source).
const LEAST: Pt = Pt::new(9.0);

/// All that the host does: print and cut out, and have pencils.
pub fn prep() -> Vec<PrepStep> {
    vec![
        PrepStep::printed(vec![
            Need { material: "plain-paper", amount: 1.0 },
            Need { material: "scissors", amount: 1.0 },
        ]),
        PrepStep {
            // It is laid out with all the rest.
            key: "pencils",
            what: String::new(),
            needs: vec![Need { material: "pencil", amount: 1.0 }],
            hands: 0.0,
            wait: 0.0,
            after: vec!["cut"],
        },
    ]
}

/// How it is put back for the next group.
#[must_use]
pub fn reset(sheets: &[&str]) -> String {
    let names: Vec<String> = sheets.iter().map(|name| (*name).to_owned()).collect();
    format!("Have a fresh print of {} ready, or erase every pencil mark.", listed(&names))
}

/// A sheet on a theme's frame, with its title and the lock's mark, and the slot that is left for the puzzle.
///
/// # Errors
/// When the theme lacks the frame or a slot.
pub fn sheet(cx: &Dressing<'_>, frame_name: &str, title: &str, alt: String) -> Hinted<(Face, Rect)> {
    let frame = cx.frame(frame_name)?;
    let mut face = Face::on(&frame, alt);
    cx.title(&mut face, &frame, frame_name, title)?;
    cx.draw_mark(&mut face, &frame)?;
    let slot = cx.slot(&frame, frame_name, if frame_name == "board" { "field" } else { "body" })?;
    Ok((face, slot))
}

/// How high words stand that must be told: their usual height; in large print as much more as they take there.
#[must_use]
pub fn told_height(cx: &Dressing<'_>, text: &Rich, w: Mm, usual: Mm) -> Mm {
    if !cx.large() {
        return usual;
    }
    let said = |paragraph: &Paragraph| paragraph.spans.iter().map(|span| span.text.as_str()).collect();
    let said: Vec<String> = text.paragraphs.iter().map(said).collect();
    usual.max(height(cx, &said, w, LARGE_PRINT))
}

/// About how high sentences of a size stand in a column. Where it is too little they shrink by a little.
#[must_use]
pub fn height(cx: &Dressing<'_>, sentences: &[String], w: Mm, size: Pt) -> Mm {
    // In the text faces of our themes a letter is 0.43 to 0.45 of its size broad on average, a line at most 1.3 times as
    // high. Where room is dear, in large print, what the faces need at least.
    let size = size.to_mm();
    let per_line = (w.get() / (size.get() * 0.44)).floor().max(1.0);
    let lines = |sentence: &String| (sentence.chars().count() as f64 / per_line).ceil() + 0.4;
    let line = if cx.large() { 1.2 } else { 1.3 };
    size * line * sentences.iter().map(lines).sum::<f64>()
}

/// The slots of a `bookmark` for its table and for the words at its foot: in large print the table leaves them more.
#[must_use]
pub fn bookmark(cx: &Dressing<'_>, table: Rect, foot: Rect) -> (Rect, Rect) {
    const LEFT: f64 = 0.11;
    if !cx.large() {
        return (table, foot);
    }
    let h = table.h * (1.0 - LEFT);
    let y = foot.y - table.h * LEFT;
    (Rect { h, ..table }, Rect { y, h: foot.bottom() - y, ..foot })
}

/// The same, with what the frame draws between table and foot covered where the words at the foot now stand.
pub fn cleared_bookmark(cx: &Dressing<'_>, face: &mut Face, table: Rect, foot: Rect) -> (Rect, Rect) {
    let between = foot.y - table.bottom();
    if cx.large() && between.get() > 0.0 {
        // Sheets are white, whatever the theme calls paper.
        let white = Colour { r: 255, g: 255, b: 255 };
        let strip = Rect { y: table.bottom(), h: between, ..table };
        let mut patch = Drawing::new(Size { w: strip.w, h: strip.h });
        let (w, h) = (strip.w, strip.h);
        patch.polygon(&[(Mm::ZERO, Mm::ZERO), (w, Mm::ZERO), (w, h), (Mm::ZERO, h)], Pen::fill(white));
        face.art(patch.svg(), strip, "");
    }
    bookmark(cx, table, foot)
}

/// Words of the sheet, set to fit.
pub fn words(face: &mut Face, cx: &Dressing<'_>, rect: Rect, text: Rich, most: f64) {
    let run = TextRun::new(rect, Role::Text, text, Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run.at_least(LEAST));
}

/// Words that run upwards, in a rectangle that is higher than wide.
pub fn upward(face: &mut Face, cx: &Dressing<'_>, rect: Rect, text: Rich, most: f64) {
    // A run is turned about the middle of the rectangle in which it would lie.
    let (x, y) = (rect.x + rect.w / 2.0 - rect.h / 2.0, rect.y + rect.h / 2.0 - rect.w / 2.0);
    let lying = Rect { x, y, w: rect.h, h: rect.w };
    let run = TextRun::new(lying, Role::Text, text, Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run.at_least(LEAST).aligned(Align::Left, Valign::Middle).turned(270.0));
}

/// Words in one row that start at the left.
pub fn row(face: &mut Face, cx: &Dressing<'_>, rect: Rect, text: Rich, most: f64) {
    let run = TextRun::new(rect, Role::Text, text, Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run.at_least(LEAST).aligned(Align::Left, Valign::Middle));
}

/// Words in one row that end at the right, as the names beside a table do.
pub fn row_to_right(face: &mut Face, cx: &Dressing<'_>, rect: Rect, text: Rich, most: f64) {
    let run = TextRun::new(rect, Role::Text, text, Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run.at_least(LEAST).aligned(Align::Right, Valign::Middle));
}

/// Words that start at the left and the top, as lists do.
pub fn lines(face: &mut Face, cx: &Dressing<'_>, rect: Rect, lines: &[String], most: f64) {
    let paragraphs = lines
        .iter()
        .map(|line| Paragraph { spans: vec![Span { text: line.clone(), ..Span::default() }] })
        .collect::<Vec<_>>();
    let text = Rich { paragraphs };
    let run = TextRun::new(rect, Role::Text, text, Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run.at_least(LEAST).aligned(Align::Left, Valign::Top));
}

/// A symbol that must be read without doubt, in a cell or beside one.
pub fn symbol(face: &mut Face, cx: &Dressing<'_>, rect: Rect, text: &str, most: f64) {
    let run =
        TextRun::new(rect, Role::Code, Rich::plain(text), Pt::new(most), cx.colour("ink"), cx.at(PuzzleField::Setup));
    face.text(run.at_least(LEAST));
}

/// The cells of a grid on a sheet.
#[derive(Clone, Copy, Debug)]
pub struct Grid {
    /// Where it stands on the face.
    pub rect: Rect,
    /// Side of a cell.
    pub cell: Mm,
    /// Rows.
    pub rows: usize,
    /// Columns.
    pub cols: usize,
}

impl Grid {
    /// The largest grid of square cells in a slot, in its middle, with cells no larger than `most`.
    #[must_use]
    pub fn fit(slot: Rect, rows: usize, cols: usize, most: Mm) -> Self {
        let cell = (slot.w / cols.max(1) as f64).min(slot.h / rows.max(1) as f64).min(most);
        let (w, h) = (cell * cols as f64, cell * rows as f64);
        let rect = Rect { x: slot.x + (slot.w - w) / 2.0, y: slot.y + (slot.h - h) / 2.0, w, h };
        Self { rect, cell, rows, cols }
    }

    /// A cell's place on the face.
    #[must_use]
    pub fn at(self, row: usize, col: usize) -> Rect {
        let (x, y) = (self.cell * col as f64, self.cell * row as f64);
        Rect { x: self.rect.x + x, y: self.rect.y + y, w: self.cell, h: self.cell }
    }

    /// Draws the lines of the cells; those where `heavy` says so, of rows and of columns, are thick.
    pub fn draw(self, face: &mut Face, cx: &Dressing<'_>, heavy: (usize, usize)) {
        let mut drawing = Drawing::new(Size { w: self.rect.w, h: self.rect.h });
        let (thin, thick) = (Pen::line(cx.colour("line"), mm(0.25)), Pen::line(cx.colour("ink"), mm(0.7)));
        let every = |at: usize, step: usize| step > 0 && at.is_multiple_of(step);
        let (w, h) = (self.rect.w, self.rect.h);
        let mut line = |pen: Pen, is_thick: bool| {
            for row in (0..=self.rows).filter(|row| every(*row, heavy.0) == is_thick) {
                let y = self.cell * row as f64;
                drawing.line((Mm::ZERO, y), (w, y), pen);
            }
            for col in (0..=self.cols).filter(|col| every(*col, heavy.1) == is_thick) {
                let x = self.cell * col as f64;
                drawing.line((x, Mm::ZERO), (x, h), pen);
            }
        };
        line(thin, false);
        line(thick, true);
        face.art(drawing.svg(), self.rect, String::new());
    }
}

/// The letter that marks the place of the answer's symbol at `index`: a, b, c.
#[must_use]
pub fn place_letter(index: usize) -> char {
    u8::try_from(index).ok().filter(|index| *index < 26).map_or('z', |index| char::from(b'a' + index))
}

/// "a, b, c" for so many places.
#[must_use]
pub fn place_letters(count: usize) -> String {
    (0..count).map(|index| place_letter(index).to_string()).collect::<Vec<_>>().join(", ")
}

/// Checks that a printed sheet says a sentence that guests must know, wherever its lines break.
///
/// # Errors
/// When it does not.
pub fn told(sheet: &Printed, sentence: &str) -> Hinted<()> {
    if sheet.says(sentence) {
        return Ok(());
    }
    Err(Trouble::new(format!("the sheet does not say \"{sentence}\"")))
}

/// The only character of a printed text, if it is only one.
#[must_use]
pub fn single(text: &PrintedText) -> Option<char> {
    let mut chars = text.text.trim().chars();
    chars.next().filter(|_| chars.next().is_none())
}

/// Texts joined line by line, from the top down and then from left to right, with single spaces.
#[must_use]
pub fn joined(texts: &[&PrintedText]) -> String {
    let mut sorted = texts.to_vec();
    // Texts whose baselines lie within half their size of one another stand on one line.
    let line = |text: &PrintedText| (text.y.get() / (text.size.to_mm().get() * 0.5).max(0.1)).round();
    sorted.sort_by(|a, b| line(a).total_cmp(&line(b)).then(a.x.get().total_cmp(&b.x.get())));
    squeezed(&sorted.iter().map(|text| text.text.as_str()).collect::<Vec<_>>().join(" "))
}

/// The pictures that are placed in a slot: number and place.
#[must_use]
pub fn drawn_in(sheet: &Printed, slot: Rect) -> Vec<(usize, Rect)> {
    // A millimetre over the edge is still inside; a frame that holds the slot is larger by more.
    let room = slot.inset(mm(-1.0));
    sheet.arts.iter().map(|art| art.rect).enumerate().filter(|(_, rect)| room.holds(*rect)).collect()
}

/// What a text of the sheet says after `head`, to its end and without the full stop there.
///
/// # Errors
/// When no text of the slot says `head`.
pub fn after(sheet: &Printed, slot: Rect, head: &str) -> Hinted<String> {
    let blocks = sheet.blocks_in(slot);
    let said = blocks.iter().find_map(|block| block.text().split_once(head).map(|(_, rest)| rest.to_owned()));
    let rest = said.ok_or_else(|| Trouble::new(format!("the sheet does not say \"{head}\"")))?;
    Ok(rest.strip_suffix('.').unwrap_or(&rest).to_owned())
}
