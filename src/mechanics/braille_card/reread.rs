//! The card and its key, read back from paper: which of the six places of a cell hold a large dot.

use super::{CARD, KEY_CARD, RULE, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Printed, PrintedShape, lanes, middle};
use crate::mechanics::{Dressing, front, signs};
use crate::units::Mm;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let row = signs::row_by(printed, CARD, cx, &cell)?;
    if row.start != front(printed, CARD)?.says(RULE) {
        return Err(Trouble::new("the card and its start mark do not agree where reading begins"));
    }
    let key = signs::key_by(printed, KEY_CARD, cx, &cell)?;
    Ok(View { text: String::new(), cells: row.signs, start_mark: row.start, key })
}

/// The dots of a cell: six round places, two across and three down; a dot is raised when it is large.
fn cell(shapes: &[&PrintedShape]) -> Option<String> {
    let round: Vec<&PrintedShape> = shapes.iter().filter(|shape| shape.fill.is_some()).copied().collect();
    let heights = lanes(round.iter().map(|shape| middle(shape.rect).1), Mm::new(0.3));
    let sides = lanes(round.iter().map(|shape| middle(shape.rect).0), Mm::new(0.3));
    let ([top, _, foot], [left, right], 6) = (heights.as_slice(), sides.as_slice(), round.len()) else { return None };
    let step = (*foot - *top) / 2.0;
    let (level, upright) = ((*top + *foot) / 2.0, (*left + *right) / 2.0);
    let mut dots: Vec<u8> = round
        .iter()
        // A speck is a fifth of the distance of two dots across, a raised dot three times that.
        .filter(|shape| shape.rect.w > step * 0.4)
        .map(|shape| {
            let (x, y) = middle(shape.rect);
            let down = if y < level - step / 2.0 {
                1
            } else if y < level + step / 2.0 {
                2
            } else {
                3
            };
            if x < upright { down } else { down + 3 }
        })
        .collect();
    dots.sort_unstable();
    Some(dots.iter().map(u8::to_string).collect())
}
