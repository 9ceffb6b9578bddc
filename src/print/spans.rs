//! Stretches of text as the templates read them, and the parts of a run that no line break divides.

use serde::Serialize;

use super::fonts::{Fonts, Style};
use crate::face::{Role, TextRun};
use crate::script::{Paragraph, Span};

/// Parts of a run whose widths are measured; the widest is among the longest few by the font's own widths.
const LONGEST: usize = 4;

/// A stretch of text in one style: its characters, emphasis, strong, and whether a line ends after it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub(super) struct SpanData {
    pub(super) t: String,
    pub(super) e: bool,
    pub(super) s: bool,
    br: bool,
}

impl SpanData {
    /// Whether the other is set in the same style.
    pub(super) const fn like(&self, other: &Self) -> bool {
        self.e == other.e && self.s == other.s
    }

    /// A stretch as it was written.
    pub(super) fn of(span: &Span) -> Self {
        Self { t: span.text.clone(), e: span.emph, s: span.strong, br: span.end_of_line }
    }

    pub(super) const fn style(&self) -> Style {
        Style { emph: self.e, strong: self.s }
    }

    /// A character in the style of `span`, in the middle of a line.
    fn within(span: &Span, c: char) -> Self {
        Self { t: c.to_string(), e: span.emph, s: span.strong, br: false }
    }
}

/// The style of a stretch.
pub(super) const fn style(span: &Span) -> Style {
    Style { emph: span.emph, strong: span.strong }
}

/// Width of a part in parts of the type size.
pub(super) fn width(fonts: &Fonts, role: Role, part: &[SpanData]) -> f64 {
    part.iter().map(|span| fonts.width(role, span.style(), &span.t)).sum()
}

/// The widest parts of a run that no line break divides.
pub(super) fn longest(fonts: &Fonts, run: &TextRun) -> Vec<Vec<SpanData>> {
    let parts = run.text.paragraphs.iter().flat_map(|paragraph| {
        if run.whole_lines {
            whole(paragraph)
        } else {
            unbroken(paragraph).into_iter().map(|part| part.spans).collect()
        }
    });
    let mut parts: Vec<(f64, Vec<SpanData>)> = parts.map(|part| (width(fonts, run.role, &part), part)).collect();
    parts.sort_by(|a, b| b.0.total_cmp(&a.0));
    parts.truncate(LONGEST);
    parts.into_iter().map(|(_, part)| part).collect()
}

/// A paragraph's lines as they are written.
fn whole(paragraph: &Paragraph) -> Vec<Vec<SpanData>> {
    let lines = paragraph.spans.split_inclusive(|span| span.end_of_line);
    lines.map(|line| line.iter().map(|span| SpanData { br: false, ..SpanData::of(span) }).collect()).collect()
}

/// A part of a paragraph that no line break divides.
#[derive(Debug, Default)]
pub(super) struct Unbroken {
    /// Its text.
    pub(super) spans: Vec<SpanData>,
    /// The style of the space before it; none where it follows a hyphen or begins a line.
    pub(super) space: Option<Style>,
    /// The author ended the line after it.
    pub(super) last: bool,
}

/// The parts of a paragraph between which a line may end: at spaces, and after hyphens and dashes between letters.
///
/// Never finer than the line breaking of Unicode Standard Annex 14, so that a part may be taken too wide, never too narrow.
pub(super) fn unbroken(paragraph: &Paragraph) -> Vec<Unbroken> {
    let mut parts: Vec<Unbroken> = Vec::new();
    let mut open = Unbroken::default();
    let mut before = ' ';
    // Ends the open part, and begins the next after such a space.
    let mut close = |open: &mut Unbroken, space: Option<Style>, last: bool| {
        let part = std::mem::replace(open, Unbroken { space, ..Unbroken::default() });
        if !part.spans.is_empty() {
            parts.push(Unbroken { last, ..part });
        } else if let (true, Some(part)) = (last, parts.last_mut()) {
            part.last = true;
        }
    };
    for span in &paragraph.spans {
        let mut chars = span.text.chars().peekable();
        while let Some(c) = chars.next() {
            if c == '\u{200B}' {
                close(&mut open, None, false);
            } else if c.is_whitespace() && !matches!(c, '\u{A0}' | '\u{202F}' | '\u{2007}') {
                close(&mut open, Some(style(span)), false);
            } else {
                let within = SpanData::within(span, c);
                match open.spans.last_mut() {
                    Some(last) if last.like(&within) => last.t.push(c),
                    _ => open.spans.push(within),
                }
                let between = before.is_alphabetic() && chars.peek().is_some_and(|next| next.is_alphabetic());
                if between && matches!(c, '-' | '\u{2010}' | '\u{2013}' | '\u{2014}') {
                    close(&mut open, None, false);
                }
            }
            before = c;
        }
        if span.end_of_line {
            close(&mut open, None, true);
            before = ' ';
        }
    }
    close(&mut open, None, false);
    parts
}
