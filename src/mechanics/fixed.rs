//! Texts whose lines are part of the puzzle: they are broken once and for all, and stand alike on every paper.

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, PuzzleField, Trouble};
use crate::face::proof::{Printed, lines, squeezed};
use crate::face::{Align, Art, Face, Layer, Piece, Role, TextRun, Valign, mm};
use crate::limits;
use crate::mechanics::{Dressing, front};
use crate::script::{Paragraph, Rich, Span};
use crate::units::{Mm, Pt, Rect, Size};

/// Paragraphs of lines.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Fixed {
    /// The paragraphs, and in each its lines, without line breaks.
    pub paragraphs: Vec<Vec<String>>,
}

impl Fixed {
    /// A text as the author wrote it: an empty line parts paragraphs, a line break stays one. A line of more than
    /// `measure` characters is broken between words where `measure` is given, and refused otherwise.
    ///
    /// # Errors
    /// When it has more lines, or longer ones, than a sheet takes at 9 points.
    pub fn written(text: &str, measure: Option<usize>) -> Hinted<Self> {
        let most = measure.unwrap_or(limits::FIXED_CHARS).min(limits::FIXED_CHARS);
        let mut paragraphs: Vec<Vec<String>> = Vec::new();
        let mut open = false;
        for line in text.lines().map(squeezed) {
            if line.is_empty() {
                open = false;
                continue;
            }
            if !open {
                paragraphs.push(Vec::new());
                open = true;
            }
            let broken = if measure.is_some() { broken(&line, most) } else { vec![line] };
            if let Some(line) = broken.iter().find(|line| line.chars().count() > most) {
                let start: String = line.chars().take(24).collect();
                return Err(Trouble::new(format!(
                    "the line that begins \"{start}\" is too long: a line takes {most} characters"
                ))
                .hint("shorten it, or break it in two"));
            }
            paragraphs.last_mut().into_iter().for_each(|paragraph| paragraph.extend(broken.iter().cloned()));
        }
        Self { paragraphs }.on_a_sheet()
    }

    /// These lines, if a sheet takes them.
    ///
    /// # Errors
    /// When there are too many.
    pub fn on_a_sheet(self) -> Hinted<Self> {
        let (lines, paragraphs) = (self.lines().count(), self.paragraphs.len());
        if lines + paragraphs / 3 > limits::FIXED_LINES {
            return Err(Trouble::new(format!(
                "the text has {lines} lines in {paragraphs} paragraphs, and a sheet takes {} lines",
                limits::FIXED_LINES.saturating_sub(paragraphs / 3)
            ))
            .hint("shorten it, or take an answer that needs less of it"));
        }
        Ok(self)
    }

    /// All lines, from the top.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        self.paragraphs.iter().flatten().map(String::as_str)
    }

    /// The words with line breaks, paragraphs parted by an empty line.
    #[must_use]
    pub fn text(&self) -> String {
        self.paragraphs.iter().map(|lines| lines.join("\n")).collect::<Vec<_>>().join("\n\n")
    }

    /// Ready to be set; with `initials`, the first letter of each line (or paragraph) is bold.
    fn rich(&self, initials: Initials) -> Rich {
        let paragraph = |own: &Vec<String>| {
            let mut spans = Vec::new();
            for (index, line) in own.iter().enumerate() {
                let bold = initials == Initials::OfLines || initials == Initials::OfParagraphs && index == 0;
                let head = if bold { line.chars().next().map_or(0, char::len_utf8) } else { 0 };
                let (first, rest) = line.split_at(head);
                if bold {
                    spans.push(Span { text: first.to_owned(), strong: true, ..Span::default() });
                }
                spans.push(Span { text: rest.to_owned(), end_of_line: index + 1 < own.len(), ..Span::default() });
            }
            Paragraph { spans }
        };
        Rich { paragraphs: self.paragraphs.iter().map(paragraph).collect() }
    }
}

/// The words of a line, broken into lines of at most so many characters; a longer word stands alone.
fn broken(line: &str, most: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in line.split(' ') {
        match lines.last_mut() {
            Some(last) if last.chars().count() + 1 + word.chars().count() <= most => {
                last.push(' ');
                last.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Which first letters are set bold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Initials {
    /// None.
    Plain,
    /// Those of all lines.
    OfLines,
    /// Those of the first line of each paragraph.
    OfParagraphs,
}

/// What stands on a sheet of fixed lines.
#[derive(Clone, Copy, Debug)]
pub struct Words<'a> {
    /// The part's key.
    pub part: &'static str,
    /// The title.
    pub title: &'a str,
    /// What the sheet is, for those who cannot see it; the lines are added.
    pub alt: &'a str,
    /// The rule below the lines; may be empty.
    pub rule: &'a str,
    /// Which first letters are bold.
    pub initials: Initials,
}

/// Scales of the frame `board` that a sheet may have, of which the smallest is taken on which the lines can be read
/// with ease: about A6, about A5, and nearly a page.
const SCALES: [f64; 3] = [0.62, 0.8, 1.0];
/// The size in points at which lines are read with ease; if even the largest frame has no room for it, they are
/// smaller.
const EASY: f64 = 12.0;
/// Greatest size of the lines in points.
const MOST: f64 = 16.0;
/// Mean width of a character, and distance of lines and of paragraphs, in the size of the type, rounded up: a guess
/// that only decides how large the sheet is.
const GUESS: (f64, f64, f64) = (0.52, 1.35, 0.45);
/// The share of the field that the rule takes.
const RULE: f64 = 0.12;
/// Lines of one paragraph stand closer than this, paragraphs further apart, in the size of the type.
const PARAGRAPH: f64 = 1.48;

/// The sheet: title, lines, rule, lock mark. It has the same size on every paper.
///
/// # Errors
/// When the theme lacks the frame `board` or a slot of it.
pub fn sheet(cx: &Dressing<'_>, words: &Words<'_>, fixed: &Fixed) -> Hinted<Piece> {
    let frame = cx.frame("board")?;
    let field = cx.slot(&frame, "board", "field")?;
    let scale = SCALES.into_iter().find(|scale| easy(fixed, field, *scale)).unwrap_or(1.0);
    let scaled = |rect: Rect| Rect { x: rect.x * scale, y: rect.y * scale, w: rect.w * scale, h: rect.h * scale };
    let size = Size { w: frame.size.w * scale, h: frame.size.h * scale };
    let mut face = Face::new(size, format!("{}\n\n{}", words.alt, fixed.text()));
    face.layers.push(Layer::Art(Art { svg: frame.svg.clone(), rect: Rect::of(size), turn: 0.0, alt: String::new() }));
    let (ink, from) = (cx.colour("ink"), cx.at(PuzzleField::Setup));
    let title = scaled(cx.slot(&frame, "board", "title")?);
    face.text(TextRun::new(title, Role::Display, Rich::plain(words.title), Pt::new(26.0), ink, from.clone()));
    let (body, foot) = parted(scaled(field), !words.rule.is_empty());
    let run =
        TextRun::new(centred(fixed, body), Role::Text, fixed.rich(words.initials), Pt::new(MOST), ink, from.clone());
    face.text(run.whole_lines().aligned(Align::Left, Valign::Middle));
    face.text(TextRun::new(foot, Role::Text, Rich::plain(words.rule), Pt::new(12.0), ink, from));
    if let (false, Some(slot)) = (cx.mark.is_empty(), frame.slot("mark")) {
        face.art(cx.symbol(cx.mark)?, scaled(slot), format!("mark: {}", cx.mark));
    }
    Ok(cx.piece(words.part, "", face))
}

/// The rectangles of the lines and of the rule.
fn parted(field: Rect, rule: bool) -> (Rect, Rect) {
    let foot = field.h * if rule { RULE } else { 0.0 };
    let air = mm(4.0);
    let body = Rect { x: field.x + air, y: field.y, w: field.w - air * 2.0, h: field.h - foot };
    (body, Rect { y: body.bottom(), h: foot, ..body })
}

/// The middle of the rectangle, about as wide as the lines come out where their number, not their length, sets their
/// size: else they would all stand at the left of a wide sheet.
#[expect(clippy::cast_precision_loss, reason = "a few dozen lines and characters")]
fn centred(fixed: &Fixed, body: Rect) -> Rect {
    let longest = fixed.lines().map(|line| line.chars().count()).max().unwrap_or(0) as f64;
    let (lines, paragraphs) = (fixed.lines().count() as f64, fixed.paragraphs.len() as f64);
    let size = (body.h / (lines * GUESS.1 + paragraphs * GUESS.2).max(1.0)).min(Pt::new(MOST).to_mm());
    let width = (size * longest * WIDE).min(body.w);
    Rect { x: body.x + (body.w - width) / 2.0, w: width, ..body }
}

/// Mean width of a character in the size of the type, for the widest of the letterings.
const WIDE: f64 = 0.6;

/// Whether the lines can be read with ease on the frame at this scale.
#[expect(clippy::cast_precision_loss, reason = "a few dozen lines and characters")]
fn easy(fixed: &Fixed, field: Rect, scale: f64) -> bool {
    let (body, _) = parted(Rect { w: field.w * scale, h: field.h * scale, ..field }, true);
    let longest = fixed.lines().map(|line| line.chars().count()).max().unwrap_or(0) as f64;
    let (lines, paragraphs) = (fixed.lines().count() as f64, fixed.paragraphs.len() as f64);
    let size = Pt::new(EASY).to_mm();
    body.w >= size * longest * GUESS.0 && body.h >= size * (lines * GUESS.1 + paragraphs * GUESS.2)
}

/// The lines of a sheet that [`sheet`] drew, as they stand on paper, and whether its rule does.
///
/// # Errors
/// When there is no such sheet.
pub fn reread(printed: &[Printed], part: &str, cx: &Dressing<'_>, rule: &str) -> Hinted<(Fixed, bool)> {
    let sheet = front(printed, part)?;
    let field = cx.slot_on(sheet, "board", "field")?;
    let stated = sheet.says(rule);
    let (body, _) = parted(field, stated);
    let mut fixed = Fixed::default();
    let mut last: Option<Mm> = None;
    for line in lines(&sheet.texts_in(body)) {
        let apart = |last: Mm| line.baseline() - last > line.size.to_mm() * PARAGRAPH;
        if last.is_none_or(apart) {
            fixed.paragraphs.push(Vec::new());
        }
        last = Some(line.baseline());
        fixed.paragraphs.last_mut().into_iter().for_each(|own| own.push(line.text.clone()));
    }
    Ok((fixed, stated))
}
