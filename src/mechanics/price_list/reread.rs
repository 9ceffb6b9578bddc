//! The bills and the list, read back from paper.

use super::{Bill, SHEET, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Printed, PrintedText, middle};
use crate::mechanics::paper::{after, drawn_in, joined, told};
use crate::mechanics::{Dressing, front};
use crate::units::Rect;

/// A bill as it is printed: how many of which thing, the total, the coin.
type Read = (Vec<(u32, String)>, u32, String);

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let slot = cx.slot_on(sheet, "board", "field")?;
    let read =
        drawn_in(sheet, slot).into_iter().map(|(art, rect)| bill(sheet, art, rect)).collect::<Hinted<Vec<Read>>>()?;
    let asked: Vec<String> =
        after(sheet, slot, "one piece each, in this order: ")?.split("; ").map(|name| name.trim().to_owned()).collect();
    let mut things: Vec<String> = Vec::new();
    for name in read.iter().flat_map(|(bought, _, _)| bought.iter().map(|(_, name)| name)).chain(&asked) {
        if !things.contains(name) {
            things.push(name.clone());
        }
    }
    let coin = read.first().map(|(_, _, coin)| coin.clone()).unwrap_or_default();
    if read.iter().any(|(_, _, other)| *other != coin) {
        return Err(Trouble::new("the bills count in different coins"));
    }
    let bills = read
        .into_iter()
        .map(|(bought, total, _)| {
            let count = |thing: &String| bought.iter().filter(|(_, name)| name == thing).map(|(count, _)| count).sum();
            Bill { pieces: things.iter().map(count).collect(), total }
        })
        .collect();
    let asked = asked.iter().filter_map(|name| things.iter().position(|thing| thing == name)).collect();
    let view = View { things, coin, bills, asked };
    told(sheet, &texts::rule(&view))?;
    told(sheet, &view.order())?;
    Ok(view)
}

/// Above the line the things, each beside its number; below it what they come to.
fn bill(sheet: &Printed, art: usize, rect: Rect) -> Hinted<Read> {
    let faulty = |what: &str| Trouble::new(format!("a bill {what}"));
    let line = sheet.shapes_of(art).into_iter().find_map(|shape| shape.segment());
    let (from, _) = line.ok_or_else(|| faulty("has no line above its total"))?;
    let (above, below): (Vec<&PrintedText>, Vec<&PrintedText>) =
        sheet.texts_in(rect).into_iter().partition(|text| middle(text.rect).1 < from.1);
    let (numbers, names): (Vec<&PrintedText>, Vec<&PrintedText>) =
        above.into_iter().partition(|text| text.text.trim().parse::<u32>().is_ok());
    let mut bought = Vec::new();
    let mut used = 0;
    for number in &numbers {
        // A thing's name may take two lines; each stands nearest to its own number.
        let apart = |other: &PrintedText, text: &PrintedText| (middle(other.rect).1 - middle(text.rect).1).get().abs();
        let own = |text: &&&PrintedText| numbers.iter().all(|other| apart(number, text) <= apart(other, text));
        let name: Vec<&PrintedText> = names.iter().filter(own).copied().collect();
        used += name.len();
        let words = joined(&name);
        let Some(thing) = words.strip_prefix('\u{d7}') else { return Err(faulty("has a number without a thing")) };
        let count = number.text.trim().parse().map_err(|_| faulty("has a number that is none"))?;
        bought.push((count, thing.trim().to_owned()));
    }
    if used != names.len() {
        return Err(faulty("has a thing without a number"));
    }
    let (word, sum): (Vec<&PrintedText>, Vec<&PrintedText>) =
        below.into_iter().partition(|text| text.text.trim() == "together");
    if word.is_empty() {
        return Err(faulty("has no total"));
    }
    let total = joined(&sum);
    let (number, coin) = total.trim().split_once(' ').unwrap_or((total.trim(), ""));
    let number = number.parse().map_err(|_| faulty(&format!("comes to \"{total}\"")))?;
    Ok((bought, number, coin.trim().to_owned()))
}
