//! Tags for padlocks: each wears the mark of its lock, so that guests find the lock that a piece belongs to.

use super::Party;
use super::printed::{hole, shaped};
use crate::diag::{Anchor, Hinted};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Art, Audience, Face, Layer, Piece, Stock};
use crate::ids::PuzzleId;
use crate::kit::{Kit, Lock};
use crate::theme::Loaded;
use crate::units::{Mm, Rect, Size};

/// A side of the folded tag: it hangs beside the body of a padlock and hides no wheels (common practice, no source).
const SIDE: Size = Size::mm(30.0, 46.0);
/// The mark's side, and how far its top is from the fold.
const MARK: f64 = 21.0;
const MARK_AT: f64 = 16.0;
/// The hole, as paper is punched (ISO 838), and how far its middle is from the fold.
const HOLE: f64 = 6.0;
const HOLE_AT: f64 = 8.5;
/// How far the free corners are cut off.
const CUT: f64 = 5.0;
/// The border's distance from the cut.
const BORDER: f64 = 2.2;

/// A tag for each lock that wants one and has a mark that the theme draws. It is printed on both sides of a fold, since
/// a tag that hangs turns round.
pub(super) fn lock_tags(party: &Party, kit: &Kit, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    let wanted = kit.tagged().filter(|lock| theme.symbol(&lock.mark).is_some());
    wanted.map(|lock| (Anchor::Lock(lock.id.clone()), tag(party, theme, lock))).collect()
}

fn tag(party: &Party, theme: &Loaded, lock: &Lock) -> Hinted<Piece> {
    let id = PuzzleId::from_text(lock.id.as_str());
    let cx = party.plain_dressing(theme, &id);
    let size = Size { w: SIDE.w, h: SIDE.h * 2.0 };
    let (fold, cut, border) = (SIDE.h, Mm::new(CUT), Mm::new(BORDER));
    let mut face = Face::new(size, format!("A tag to fold, with the mark {} on both sides", lock.mark));
    shaped(
        &mut face,
        &[
            (cut, Mm::ZERO),
            (size.w - cut, Mm::ZERO),
            (size.w, cut),
            (size.w, size.h - cut),
            (size.w - cut, size.h),
            (cut, size.h),
            (Mm::ZERO, size.h - cut),
            (Mm::ZERO, cut),
        ],
    );
    face.folds.push(((Mm::ZERO, fold), (size.w, fold)));
    let mut drawing = Drawing::new(size);
    // The border runs beside the free edges of each side and ends at the fold.
    let (left, right, off) = (border, size.w - border, cut + border * 0.4);
    for (edge, corner, inner) in [(border, off, fold - border), (size.h - border, size.h - off, fold + border)] {
        let (in_left, in_right) = (off, size.w - off);
        let pen = Pen::line(cx.colour("ink"), Mm::new(0.35));
        let line = [
            (left, inner),
            (left, corner),
            (in_left, edge),
            (in_right, edge),
            (right, corner),
            (right, inner),
            (left, inner),
        ];
        for pair in line.windows(2) {
            if let [from, to] = pair {
                drawing.line(*from, *to, pen);
            }
        }
    }
    face.art(drawing.svg(), Rect::of(size), String::new());
    let symbol = cx.symbol(&lock.mark)?;
    let x = (size.w - Mm::new(MARK)) / 2.0;
    // The far side stands on its head on the sheet, so that it is upright once the tag is folded.
    for (y, turn) in [(fold - Mm::new(MARK_AT + MARK), 180.0), (fold + Mm::new(MARK_AT), 0.0)] {
        let rect = Rect { x, y, w: Mm::new(MARK), h: Mm::new(MARK) };
        face.layers.push(Layer::Art(Art { svg: symbol.clone(), rect, turn, alt: format!("mark: {}", lock.mark) }));
    }
    for y in [fold - Mm::new(HOLE_AT), fold + Mm::new(HOLE_AT)] {
        hole(&mut face, cx.colour("line"), (size.w / 2.0, y), HOLE);
    }
    Ok(Piece {
        id: format!("lock-tag-{}", lock.id),
        part: String::new(),
        label: format!("Tag: {}", party.say(&lock.name)),
        audience: Audience::Players,
        front: face,
        back: None,
        copies: 1,
        measured: false,
        stock: Stock::Card,
        on_a_thing: true,
        large: false,
        group: "lock-tags".into(),
    })
}
