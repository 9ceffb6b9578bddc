//! The tags and the note, read back from paper, and what the host is told to hide where.

use super::texts::TIE;
use super::{Hiding, Slip, Teller, Thing, View, lay};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Block, Printed};
use crate::mechanics::{Dressing, front, told};

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let mut things = tags(printed, cx)?;
    let steps = told(printed);
    name(&mut things, &steps)?;
    let (place, slip) = hidden(&things, &steps)?;
    let (note, told_by) = if printed.iter().any(|side| side.part == "note") {
        let card = front(printed, "note")?;
        let body = card.blocks_in(cx.slot_on(card, "note", "body")?);
        (body.iter().map(Block::text).collect::<Vec<_>>().join(" "), Teller::Card)
    } else {
        let says = steps.iter().find_map(|step| Some(step.split_once('“')?.1.split_once('”')?.0.to_owned()));
        (says.unwrap_or_default(), Teller::Letter)
    };
    Ok(View { things, note, told_by, place, slip })
}

/// The tags' signs and words; the names of the things are not printed on them.
fn tags(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<Vec<Thing>> {
    let looks = cx.looks()?;
    // The word stands below the sign, or in the title's place where the theme gives tags no title.
    let slot = if cx.name("tag-title", "").is_empty() { "title" } else { "body" };
    let mut things: Vec<Thing> = Vec::new();
    for tag in printed.iter().filter(|side| side.part == "things" && !side.back) {
        let word: Vec<String> = tag.blocks_in(cx.slot_on(tag, "tag", slot)?).iter().map(Block::text).collect();
        let word = word.join(" ");
        let body = cx.slot_on(tag, "tag", "body")?;
        let signs: Vec<&str> = tag
            .arts_in(body)
            .into_iter()
            .map(|(art, _)| looks.named(&tag.shapes_of(art)).first().copied().unwrap_or("?"))
            .collect();
        let [sign] = signs.as_slice() else {
            return Err(Trouble::new(format!("the tag \"{word}\" shows {} signs, not one", signs.len())));
        };
        // A word that is another symbol's name would call a picture what it is not.
        let other = cx.theme.theme.symbols.keys().any(|name| name != sign && lay::word_of(name) == word);
        if *sign == "?" || other {
            return Err(Trouble::new(format!("the tag \"{word}\" shows another picture ({sign})")));
        }
        if things.iter().any(|thing| thing.sign == *sign) && things.iter().any(|thing| thing.word != word) {
            return Err(Trouble::new(format!("two tags show the same picture ({sign})")));
        }
        things.push(Thing { name: String::new(), sign: (*sign).to_owned(), word });
    }
    Ok(things)
}

/// Which tag the host ties to which thing.
fn name(things: &mut [Thing], steps: &[&str]) -> Hinted<()> {
    let list = steps.iter().find_map(|step| step.strip_prefix(TIE)?.strip_suffix('.'));
    let mut rest = list.ok_or_else(|| Trouble::new("the host is not told which tag goes where"))?;
    let words: Vec<String> = things.iter().map(|thing| format!("; {} on ", thing.word)).collect();
    for (index, thing) in things.iter_mut().enumerate() {
        let named = rest.strip_prefix(thing.word.as_str()).and_then(|rest| rest.strip_prefix(" on "));
        let named = named.ok_or_else(|| Trouble::new(format!("no thing wears the tag \"{}\"", thing.word)))?;
        let end = words.get(index + 1).and_then(|next| named.find(next.as_str())).unwrap_or(named.len());
        thing.name = named.get(..end).unwrap_or_default().to_owned();
        rest = named.get(end..).unwrap_or_default().trim_start_matches("; ");
    }
    Ok(())
}

/// Where the key lies, or which slip lies where.
fn hidden(things: &[Thing], steps: &[&str]) -> Hinted<(Hiding, Option<Slip>)> {
    for step in steps {
        if step.starts_with("Wrap the key") {
            return Ok((Hiding::InFood, None));
        }
        if let Some((code, place)) =
            step.strip_prefix("Write ").and_then(|rest| rest.split_once(" on a slip of paper and hide it "))
        {
            let at = things.iter().position(|thing| place == format!("{} {}.", way(place).word(), thing.name));
            let at = at.ok_or_else(|| Trouble::new("the slip is hidden at no thing that wears a tag"))?;
            return Ok((way(place), Some(Slip { at, symbols: code.chars().collect() })));
        }
        if let Some(rest) = step.strip_prefix("Hide the key of ") {
            let found = [Hiding::Under, Hiding::Behind, Hiding::Inside].into_iter().find(|hiding| {
                things.iter().any(|thing| rest.contains(&format!(" {} {}.", hiding.word(), thing.name)))
            });
            return found
                .map(|place| (place, None))
                .ok_or_else(|| Trouble::new("the key is hidden at no thing that wears a tag"));
        }
    }
    Err(Trouble::new("the host is not told where to hide anything"))
}

fn way(place: &str) -> Hiding {
    match place.split(' ').next() {
        Some("behind") => Hiding::Behind,
        Some("inside") => Hiding::Inside,
        _ => Hiding::Under,
    }
}
