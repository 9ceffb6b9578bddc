use super::scale::Scaled;
use super::{Fits, Party};
use crate::diag::{Anchor, Hinted, Trouble};
use crate::face::{Align, Audience, Face, Layer, Piece, Role, Stock, TextRun, Valign};
use crate::ids::PuzzleId;
use crate::limits;
use crate::mechanics::Dressing;
use crate::script::{Paragraph, Rich, Span};
use crate::theme::Loaded;
use crate::units::{Mm, Pt, Rect, Size};

/// Greatest and least size of the story, in points: clear-print guidance asks for 12 at least and 14 by choice
/// (UKAAF, "Creating clear print and large print documents", G003).
const STORY: (f64, f64) = (15.0, 12.0);
/// Widest column of the story, in millimetres: about 75 characters at the greatest size, which the eye finds
/// its way back through (WCAG 2.2, 1.4.8, asks for 80 at most).
const COLUMN: f64 = 148.0;
/// Air between the art and the words, in millimetres.
const AIR: f64 = 6.0;
/// Height of the signature with the air above it, in millimetres.
const SIGNED: f64 = 15.0;
/// Mean width of a character of running text as a share of its size, rounded up: a guess that only decides how
/// far below the head the signature stands, never whether the words fit.
const CHARACTER: f64 = 0.47;
/// Distance from line to line, and the air after a paragraph, as shares of the type size; rounded up likewise.
const LINE: (f64, f64) = (1.38, 0.75);

/// Sizes of large print, in points: the story's, which is the usual wish for it (UKAAF G003: 16 at least, ideally 18),
/// and the greatest and least of heading and signature.
const LARGE_STORY: f64 = 18.0;
const LARGE_HEADING: (f64, f64) = (32.0, 16.0);
const LARGE_SIGNATURE: (f64, f64) = (36.0, 18.0);

/// Places and dressing of a letter's page.
struct Page<'a> {
    party: &'a Party,
    cx: Dressing<'a>,
    size: Size,
    /// The column of the words: left edge and width.
    column: (Mm, Mm),
    foot: Scaled,
}

impl<'a> Page<'a> {
    fn new(party: &'a Party, theme: &'a Loaded, id: &'a PuzzleId, size: Size) -> Hinted<Self> {
        let cx = party.plain_dressing(theme, id);
        let foot = Scaled::within(cx.frame("letterfoot")?, Size { w: size.w, h: size.h * 0.12 });
        let width = Mm::new(COLUMN).min(size.w - Mm::new(16.0));
        Ok(Self { party, cx, size, column: ((size.w - width) / 2.0, width), foot })
    }

    /// The head with its heading; answers where the words begin.
    fn head(&self, face: &mut Face, sizes: (f64, f64)) -> Hinted<Mm> {
        let size = self.size;
        let head = Scaled::within(self.cx.frame("letterhead")?, Size { w: size.w, h: size.h * 0.3 });
        let head_rect = Rect { x: (size.w - head.size().w) / 2.0, y: Mm::ZERO, w: head.size().w, h: head.size().h };
        face.layers.push(Layer::Art(head.art(head_rect)));
        let mut y = head_rect.bottom() + Mm::new(AIR);
        let heading = &self.party.script.letter.heading;
        if !heading.is_empty() {
            let rect = match head.slot("title") {
                Some(slot) => slot.moved(head_rect.x, head_rect.y),
                None => {
                    let rect = Rect { x: self.column.0, y, w: self.column.1, h: Mm::new(13.0) };
                    y += Mm::new(15.0);
                    rect
                }
            };
            self.put(face, rect, (Role::Display, heading), sizes, (Align::Centre, Valign::Middle));
        }
        let least = Mm::new(SIGNED + 30.0 + AIR);
        if y + least > self.foot_rect().y || self.column.1 < Mm::new(60.0) {
            return Err(Trouble::new("the page is too small for a letter").hint("choose A4 or Letter paper"));
        }
        Ok(y)
    }

    fn foot_rect(&self) -> Rect {
        let Size { w, h } = self.foot.size();
        Rect { x: (self.size.w - w) / 2.0, y: self.size.h - h, w, h }
    }

    fn draw_foot(&self, face: &mut Face) {
        face.layers.push(Layer::Art(self.foot.art(self.foot_rect())));
    }

    /// Where the words lie below `y`: down to the signature above the foot, or to the page's end.
    fn body(&self, y: Mm, last: bool) -> Rect {
        let end = if last { self.foot_rect().y - Mm::new(AIR / 2.0 + SIGNED) } else { self.size.h };
        Rect { x: self.column.0, y, w: self.column.1, h: end - y }
    }

    fn story(&self, face: &mut Face, rect: Rect, words: &Rich, sizes: (f64, f64)) {
        self.put(face, rect, (Role::Text, words), sizes, (Align::Left, Valign::Top));
    }

    fn signature(&self, face: &mut Face, below: Mm, sizes: (f64, f64)) {
        let rect = Rect { x: self.column.0, y: below + Mm::new(1.0), w: self.column.1, h: Mm::new(SIGNED - 1.0) };
        self.put(face, rect, (Role::Hand, &self.party.script.letter.signature), sizes, (Align::Left, Valign::Middle));
    }

    fn put(
        &self,
        face: &mut Face,
        rect: Rect,
        (role, text): (Role, &Rich),
        sizes: (f64, f64),
        (align, valign): (Align, Valign),
    ) {
        let run = TextRun::new(rect, role, text.clone(), Pt::new(sizes.0), self.cx.colour("ink"), Anchor::Letter);
        face.text(run.aligned(align, valign).at_least(Pt::new(sizes.1)));
    }

    /// Whether words fit a place at the size of large print.
    fn takes(&self, rect: Rect, words: &Rich, fits: Fits<'_>) -> Hinted<bool> {
        let mut face = Face::new(self.size, "");
        self.story(&mut face, rect, words, (LARGE_STORY, LARGE_STORY));
        Ok(fits(&face)?.into_iter().all(|fits| fits))
    }
}

/// The story letter: head, salutation, story, closing, signature, foot.
pub(super) fn letter(party: &Party, theme: &Loaded, size: Size) -> Hinted<Piece> {
    let id = PuzzleId::from_text("letter");
    let page = Page::new(party, theme, &id, size)?;
    let mut face = Face::new(size, alt(party));
    let y = page.head(&mut face, (30.0, 14.0))?;
    page.draw_foot(&mut face);
    // One run, so that salutation, story and closing come out at one size.
    let words = words(party);
    let room = page.body(y, true);
    let body = Rect { h: guessed_height(&words, room.w).min(room.h), ..room };
    page.story(&mut face, body, &words, STORY);
    page.signature(&mut face, body.bottom(), (32.0, 16.0));
    Ok(piece("letter".into(), "Letter".into(), face))
}

/// The letter in large print: its story flows over as many pages as it needs, the last of them signed.
pub(super) fn large(party: &Party, theme: &Loaded, size: Size, fits: Fits<'_>) -> Hinted<Vec<Piece>> {
    let id = PuzzleId::from_text("letter");
    let page = Page::new(party, theme, &id, size)?;
    let mut left = words(party);
    let mut faces: Vec<Face> = Vec::new();
    loop {
        let mut face = Face::new(size, if faces.is_empty() { alt(party) } else { "The letter goes on".to_owned() });
        let y = if faces.is_empty() { page.head(&mut face, LARGE_HEADING)? } else { Mm::new(AIR) };
        let (end, full) = (page.body(y, true), page.body(y, false));
        if page.takes(end, &left, fits)? || faces.len() >= limits::LETTER_PAGES {
            // The signature follows the words closely: the least of a few heights that takes them.
            let guess = guessed(&left, end.w, LARGE_STORY);
            let mut body = end;
            for share in [1.0, 0.94, 0.88, 0.82, 0.76] {
                let closer = Rect { h: (guess * share).min(end.h), ..end };
                if !page.takes(closer, &left, fits)? {
                    break;
                }
                body = closer;
            }
            page.story(&mut face, body, &left, (LARGE_STORY, LARGE_STORY));
            page.signature(&mut face, body.bottom(), LARGE_SIGNATURE);
            page.draw_foot(&mut face);
            faces.push(face);
            break;
        }
        let (here, rest) = filled(&page, full, &left, fits)?;
        page.story(&mut face, full, &here, (LARGE_STORY, LARGE_STORY));
        faces.push(face);
        left = rest;
    }
    let count = faces.len();
    let named = |(at, face): (usize, Face)| match at {
        _ if count == 1 => Piece { large: true, ..piece("letter".into(), "Letter".into(), face) },
        0 => Piece { large: true, ..piece("letter".into(), format!("Letter, page 1 of {count}"), face) },
        at => {
            let n = at + 1;
            Piece { large: true, ..piece(format!("letter-{n}"), format!("Letter, page {n} of {count}"), face) }
        }
    };
    Ok(faces.into_iter().enumerate().map(named).collect())
}

/// As much of a story as a place takes, and the rest: whole paragraphs, or words of one that is too long for a page.
fn filled(page: &Page<'_>, rect: Rect, words: &Rich, fits: Fits<'_>) -> Hinted<(Rich, Rich)> {
    let take = |count: usize| {
        let (here, rest) = words.paragraphs.split_at(count.min(words.paragraphs.len()));
        (Rich { paragraphs: here.to_vec() }, Rich { paragraphs: rest.to_vec() })
    };
    let mut best = 0;
    // The closing never stands alone on the next page without a line of the story: one paragraph is kept back.
    for count in 1..words.paragraphs.len() {
        if !page.takes(rect, &take(count).0, fits)? {
            break;
        }
        best = count;
    }
    if best > 0 {
        return Ok(take(best));
    }
    let Some((first, more)) = words.paragraphs.split_first() else { return Ok(take(0)) };
    let (mut low, mut high) = (0, first.spans.iter().flat_map(|span| span.text.split(' ')).count());
    while high - low > 1 {
        let mid = low.midpoint(high);
        let here = Rich { paragraphs: vec![split(first, mid).0] };
        if page.takes(rect, &here, fits)? {
            low = mid;
        } else {
            high = mid;
        }
    }
    let (here, rest) = split(first, low.max(1));
    let rest = std::iter::once(rest).chain(more.iter().cloned()).filter(|paragraph| !paragraph.spans.is_empty());
    Ok((Rich { paragraphs: vec![here] }, Rich { paragraphs: rest.collect() }))
}

/// A paragraph parted after so many words.
fn split(paragraph: &Paragraph, words: usize) -> (Paragraph, Paragraph) {
    let (mut here, mut rest, mut left) = (Paragraph::default(), Paragraph::default(), words);
    for span in &paragraph.spans {
        let parts: Vec<&str> = span.text.split(' ').collect();
        let (now, later) = parts.split_at(left.min(parts.len()));
        left -= now.len();
        for (to, words) in [(&mut here, now), (&mut rest, later)] {
            if !words.is_empty() {
                to.spans.push(Span { text: words.join(" "), ..span.clone() });
            }
        }
    }
    (here, rest)
}

/// Salutation, story and closing in one.
fn words(party: &Party) -> Rich {
    let text = &party.script.letter;
    let parts = [&text.salutation, &text.body, &text.closing];
    Rich { paragraphs: parts.into_iter().flat_map(|part| part.paragraphs.clone()).collect() }
}

fn piece(id: String, label: String, front: Face) -> Piece {
    Piece {
        id,
        part: String::new(),
        label,
        audience: Audience::Players,
        front,
        back: None,
        copies: 1,
        measured: false,
        stock: Stock::Plain,
        on_a_thing: false,
        large: false,
        group: "letter".into(),
    }
}

/// How tall the story is at its greatest size, guessed and rounded up.
fn guessed_height(story: &Rich, width: Mm) -> Mm {
    guessed(story, width, STORY.0)
}

/// How tall a story is at a size in points, guessed and rounded up.
fn guessed(story: &Rich, width: Mm, size: f64) -> Mm {
    let size = Pt::new(size).to_mm().get();
    let per_line = (width.get() / (size * CHARACTER)).max(1.0);
    let mut lines = 0.0;
    for paragraph in &story.paragraphs {
        let mut broken = 0_usize;
        for span in &paragraph.spans {
            broken += span.text.chars().count();
            if span.end_of_line {
                lines += (Mm::new(count(broken)).get() / per_line).ceil().max(1.0);
                broken = 0;
            }
        }
        lines += (count(broken) / per_line).ceil();
    }
    Mm::new(size * (lines * LINE.0 + count(story.paragraphs.len()) * LINE.1) + 2.0)
}

#[expect(clippy::cast_precision_loss, reason = "texts are bounded far below 2^52 characters")]
fn count(n: usize) -> f64 {
    n as f64
}

/// The letter aloud.
fn alt(party: &Party) -> String {
    let text = &party.script.letter;
    let parts = [&text.heading, &text.salutation, &text.body, &text.closing, &text.signature];
    let parts: Vec<String> = parts.iter().map(|part| part.text()).filter(|part| !part.is_empty()).collect();
    parts.join("\n\n")
}
