use super::Party;
use super::notes::joined;
use super::scale::Scaled;
use crate::diag::{Anchor, Hinted, Trouble};
use crate::face::{Audience, Piece, Role, TextRun};
use crate::ids::PuzzleId;
use crate::kit::{BoxDef, Kit};
use crate::script::Rich;
use crate::script::{capital, typographic};
use crate::theme::Loaded;
use crate::units::{Mm, Pt, Rect, Size};

/// Side of a lock's mark on a label, at most, in millimetres.
const MARK: f64 = 15.0;
/// Air between two marks, in millimetres.
const GAP: f64 = 4.0;

/// The labels of the boxes that want one: the box's name and the marks of the locks that shut it.
pub(super) fn labels(party: &Party, kit: &Kit, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    let wanted = kit.boxes.iter().filter_map(|item| item.label.map(|(w, h)| (item, Size::mm(w, h))));
    wanted.map(|(item, room)| (Anchor::Box(item.id.clone()), label(party, kit, theme, item, room))).collect()
}

fn label(party: &Party, kit: &Kit, theme: &Loaded, item: &BoxDef, room: Size) -> Hinted<Piece> {
    if room.w <= Mm::new(1.0) || room.h <= Mm::new(1.0) {
        return Err(Trouble::new("the label has no size").hint("give its width and height in millimetres"));
    }
    let id = PuzzleId::from_text(item.id.as_str());
    let cx = party.plain_dressing(theme, &id);
    let frame = Scaled::within(cx.frame("label")?, room);
    let slot = |name: &str| {
        frame.slot(name).ok_or_else(|| {
            Trouble::new(format!("the frame `label` has no slot `{name}`"))
                .hint(format!("draw a rectangle with the id `slot-{name}` in it"))
        })
    };
    let name = capital(&party.say(&item.name));
    let marks: Vec<&str> = item
        .locks
        .iter()
        .filter_map(|id| party.positions.lock(kit, id))
        .map(|lock| lock.mark.as_str())
        .filter(|mark| theme.symbol(mark).is_some())
        .collect();
    let shown = if marks.is_empty() { String::new() } else { format!(", with the marks {}", marks.join(", ")) };
    let mut face = frame.face(format!("Label: {name}{shown}"));
    let (title, body) = (slot("title")?, slot("body")?);
    let room = if marks.is_empty() { joined(title, body) } else { title };
    let from = Anchor::Box(item.id.clone());
    face.text(TextRun::new(
        room,
        Role::Display,
        Rich::plain(typographic(&name)),
        Pt::new(26.0),
        cx.colour("ink"),
        from,
    ));
    for (mark, rect) in marks.iter().zip(row(body, marks.len())) {
        face.art(cx.symbol(mark)?, rect, format!("mark: {mark}"));
    }
    Ok(Piece {
        id: format!("label-{}", item.id),
        part: String::new(),
        label: format!("Label: {name}"),
        audience: Audience::Players,
        front: face,
        back: None,
        copies: 1,
        measured: false,
        stock: crate::face::Stock::Card,
        on_a_thing: true,
        large: false,
        group: "labels".into(),
    })
}

/// Squares in a row, in the middle of `room`.
pub(super) fn row(room: Rect, count: usize) -> Vec<Rect> {
    #[expect(clippy::cast_precision_loss, reason = "a box has a handful of locks")]
    let n = count.max(1) as f64;
    let side = ((room.w.get() - GAP * (n - 1.0)) / n).min(room.h.get()).clamp(0.0, MARK);
    let left = room.x.get() + (room.w.get() - side * n - GAP * (n - 1.0)) / 2.0;
    let top = room.y.get() + (room.h.get() - side) / 2.0;
    let mut x = left;
    std::iter::repeat_with(|| {
        let rect = Rect::mm(x, top, side, side);
        x += side + GAP;
        rect
    })
    .take(count)
    .collect()
}
