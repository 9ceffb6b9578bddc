//! The speakers, read back from paper.

use super::texts::{rule, said};
use super::{Claim, ORDER, SHEET, Speaker, View};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Printed, PrintedText, middle, within};
use crate::limits;
use crate::mechanics::paper::{drawn_in, joined, single, told};
use crate::mechanics::{Dressing, front};
use crate::units::Rect;

/// Straight lines of which the outline of a circle is made at least, as it is traced.
const ROUND: usize = 12;

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let slot = cx.slot_on(sheet, "board", "field")?;
    let round = |rect: &Rect| (rect.w.get() / rect.h.get() - 1.0).abs() < 0.02;
    let mut badges: Vec<Rect> = drawn_in(sheet, slot)
        .into_iter()
        .flat_map(|(art, _)| sheet.shapes_of(art))
        .filter(|shape| shape.stroke.is_some())
        .filter(|shape| matches!(shape.contours.as_slice(), [line] if line.closed && line.points.len() > ROUND))
        .map(|shape| shape.rect)
        .filter(round)
        .collect();
    badges.sort_by(|a, b| a.y.get().total_cmp(&b.y.get()));
    let words = sheet.texts_in(slot);
    let quoted = words.iter().filter(|text| text.text.starts_with('\u{201c}')).map(|text| text.rect.x.get());
    let column = quoted.fold(f64::MAX, f64::min);
    // Half the way to the next badge: as far as a row reaches.
    let half = match badges.as_slice() {
        [a, b, ..] => (b.y - a.y).get() / 2.0,
        _ => slot.h.get(),
    };
    let (mut speakers, mut says) = (Vec::new(), Vec::new());
    for badge in &badges {
        let near = |text: &&&PrintedText| (middle(text.rect).1 - middle(*badge).1).get().abs() < half;
        let (on, beside): (Vec<&PrintedText>, Vec<&PrintedText>) =
            words.iter().filter(near).copied().partition(|text| within(*badge, middle(text.rect)));
        let [on] = on.as_slice() else { return Err(Trouble::new("a badge carries no symbol, or several")) };
        let symbol = single(on).ok_or_else(|| Trouble::new(format!("a badge carries \"{}\"", on.text)))?;
        let right = |text: &&PrintedText| text.rect.x.get() > column - 1.0;
        let (sentence, name): (Vec<&PrintedText>, Vec<&PrintedText>) = beside.into_iter().partition(right);
        speakers.push(Speaker { name: joined(&name), badge: symbol, says: Claim::True(usize::MAX) });
        says.push(joined(&sentence));
    }
    let mut view = View { speakers, liars: None };
    let claims = claims(view.speakers.len());
    let told_by: Vec<(String, Claim)> = claims.into_iter().map(|claim| (said(&view, claim), claim)).collect();
    for (speaker, words) in view.speakers.iter_mut().zip(says) {
        let mut meant = told_by.iter().filter(|(text, _)| *text == words).map(|(_, claim)| *claim);
        speaker.says = match (meant.next(), meant.next()) {
            (Some(claim), None) => claim,
            _ => return Err(Trouble::new(format!("{} says {words}, which has no one meaning", speaker.name))),
        };
    }
    let counts = (1..=view.speakers.len()).map(Some).chain([None]);
    let told_count = counts.map(|liars| View { liars, ..view.clone() }).find(|view| sheet.says(&rule(view)));
    told(sheet, ORDER)?;
    told_count.ok_or_else(|| Trouble::new("the sheet does not say what the sentences are"))
}

/// Everything that so many speakers can say.
fn claims(count: usize) -> Vec<Claim> {
    let mut claims = Vec::new();
    for a in 0..count.min(limits::SPEAKERS) {
        claims.extend([Claim::True(a), Claim::False(a)]);
        claims.extend(
            (0..count)
                .filter(|b| *b != a)
                .flat_map(|b| [Claim::Alike(a, b), Claim::Unlike(a, b), Claim::NotBoth(a, b)]),
        );
    }
    claims
}
