use super::Party;
use super::scale::Scaled;
use crate::diag::{Anchor, Hinted, Trouble};
use crate::face::{Align, Audience, Face, Layer, Piece, Role, TextRun, Valign};
use crate::ids::PuzzleId;
use crate::script::Rich;
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

/// The story letter: head, salutation, story, closing, signature, foot.
pub(super) fn letter(party: &Party, theme: &Loaded, size: Size) -> Hinted<Piece> {
    let id = PuzzleId::from_text("letter");
    let cx = party.plain_dressing(theme, &id);
    let text = &party.script.letter;
    let mut face = Face::new(size, alt(party));
    let head = Scaled::within(cx.frame("letterhead")?, Size { w: size.w, h: size.h * 0.3 });
    let foot = Scaled::within(cx.frame("letterfoot")?, Size { w: size.w, h: size.h * 0.12 });
    let middle = |width: Mm| (size.w - width) / 2.0;
    let head_rect = Rect { x: middle(head.size().w), y: Mm::ZERO, w: head.size().w, h: head.size().h };
    let foot_size = foot.size();
    let foot_rect = Rect { x: middle(foot_size.w), y: size.h - foot_size.h, w: foot_size.w, h: foot_size.h };
    face.layers.push(Layer::Art(head.art(head_rect)));
    face.layers.push(Layer::Art(foot.art(foot_rect)));

    let ink = cx.colour("ink");
    let mut put = |rect: Rect, role: Role, text: &Rich, sizes: (f64, f64), align: Align, valign: Valign| {
        let run = TextRun::new(rect, role, text.clone(), Pt::new(sizes.0), ink, Anchor::Letter);
        face.text(run.aligned(align, valign).at_least(Pt::new(sizes.1)));
    };
    let width = Mm::new(COLUMN).min(size.w - Mm::new(16.0));
    let x = middle(width);
    let mut y = head_rect.bottom() + Mm::new(AIR);
    if !text.heading.is_empty() {
        let (rect, align) = match head.slot("title") {
            Some(slot) => (slot.moved(head_rect.x, head_rect.y), Align::Centre),
            None => {
                let rect = Rect { x, y, w: width, h: Mm::new(13.0) };
                y += Mm::new(15.0);
                (rect, Align::Centre)
            }
        };
        put(rect, Role::Display, &text.heading, (30.0, 14.0), align, Valign::Middle);
    }
    let least = Mm::new(SIGNED + 30.0 + AIR);
    if y + least > foot_rect.y || width < Mm::new(60.0) {
        return Err(Trouble::new("the page is too small for a letter").hint("choose A4 or Letter paper"));
    }
    // One run, so that salutation, story and closing come out at one size.
    let parts = [&text.salutation, &text.body, &text.closing];
    let words = Rich { paragraphs: parts.into_iter().flat_map(|part| part.paragraphs.clone()).collect() };
    let room = foot_rect.y - Mm::new(AIR / 2.0 + SIGNED) - y;
    let body = Rect { x, y, w: width, h: guessed_height(&words, width).min(room) };
    put(body, Role::Text, &words, STORY, Align::Left, Valign::Top);
    let signature = Rect { x, y: body.bottom() + Mm::new(1.0), w: width, h: Mm::new(SIGNED - 1.0) };
    put(signature, Role::Hand, &text.signature, (32.0, 16.0), Align::Left, Valign::Middle);
    Ok(Piece {
        id: "letter".into(),
        part: String::new(),
        label: "Letter".into(),
        audience: Audience::Players,
        front: face,
        back: None,
        copies: 1,
        measured: false,
        group: "letter".into(),
    })
}

/// How tall the story is at its greatest size, guessed and rounded up.
fn guessed_height(story: &Rich, width: Mm) -> Mm {
    let size = Pt::new(STORY.0).to_mm().get();
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
