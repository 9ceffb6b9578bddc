//! The statements, the table and the list, read back from paper.

use super::{Kind, SHEET, Statement, Thing, View, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Lattice, Printed, PrintedText, lines, middle, ruled, squeezed};
use crate::mechanics::paper::{after, drawn_in, joined, told};
use crate::mechanics::{Dressing, front};
use crate::script::capital;
use crate::units::{Mm, Rect};

/// Lines closer than this are one.
const ONE_LINE: Mm = Mm::new(0.5);

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let sheet = front(printed, SHEET)?;
    let slot = cx.slot_on(sheet, "board", "field")?;
    // In large print the table may stand on a sheet of its own, after that of the words.
    let with_table = printed.iter().rfind(|side| side.part == SHEET && !side.back).unwrap_or(sheet);
    let (art, rect) = drawn_in(with_table, cx.slot_on(with_table, "board", "field")?)
        .into_iter()
        .max_by_key(|(art, _)| with_table.shapes_of(*art).len())
        .ok_or_else(|| Trouble::new("no table is drawn on the sheet"))?;
    let names = table(with_table, art, rect)?;
    let words_end = if std::ptr::eq(sheet, with_table) {
        rect.y
    } else {
        let list = sheet.texts_in(slot).into_iter().find(|text| text.text.starts_with(texts::READ));
        list.map_or(slot.bottom(), |text| text.rect.y)
    };
    let mut view = named(sheet, names)?;
    view.statements =
        numbered(sheet, slot, words_end)?.iter().map(|text| statement(&view, text)).collect::<Hinted<Vec<_>>>()?;
    view.asked = asked(&view, sheet, slot)?;
    told(sheet, &texts::order(&view))?;
    Ok(view)
}

/// The names beside the table by kinds: the first down its side, the others across its top.
fn table(sheet: &Printed, art: usize, rect: Rect) -> Hinted<Vec<Vec<String>>> {
    let drawn = sheet.shapes_of(art);
    let blocks: Vec<Rect> = drawn.iter().filter(|shape| shape.segment().is_none()).map(|shape| shape.rect).collect();
    let thin: Vec<_> = drawn.iter().copied().filter(|shape| shape.segment().is_some()).collect();
    let faulty = || Trouble::new("the table is not whole");
    let first = blocks.iter().min_by(|a, b| (a.x + a.y).get().total_cmp(&(b.x + b.y).get())).ok_or_else(faulty)?;
    let across = blocks.iter().filter(|block| (block.y - first.y).get().abs() < ONE_LINE.get()).count();
    let items = ruled(thin.iter().copied().filter(|line| first.holds(line.rect)), ONE_LINE).1.len() + 1;
    // Each pair of kinds meets in one block.
    if across == 0 || blocks.len() * 2 != across * (across + 1) {
        return Err(faulty());
    }
    let lanes = |from: Mm, step: Mm| (0..across * items).map(|at| from + step * (at as f64 + 0.5)).collect();
    let cells = Lattice { rows: lanes(first.y, first.h / items as f64), cols: lanes(first.x, first.w / items as f64) };
    let mut above: Vec<Vec<&PrintedText>> = vec![Vec::new(); across * items];
    let mut beside = above.clone();
    for text in &sheet.texts {
        let at = middle(text.rect);
        let Some((row, col)) = cells.cell(at) else { continue };
        if text.turn.abs() > 45.0 && at.1 < rect.y {
            above[col].push(text);
        } else if text.turn.abs() < 45.0 && at.0 < rect.x && at.1 > rect.y && at.1 < rect.bottom() {
            beside[row].push(text);
        }
    }
    // Words that run upwards have their first line on the left.
    let upward = |mut texts: Vec<&PrintedText>| {
        texts.sort_by(|a, b| a.x.get().total_cmp(&b.x.get()));
        squeezed(&texts.iter().map(|text| text.text.as_str()).collect::<Vec<_>>().join(" "))
    };
    let side: Vec<String> = beside.iter().map(|texts| joined(texts)).collect();
    let top: Vec<String> = above.into_iter().map(upward).collect();
    let kinds = |names: &[String]| names.chunks(items).map(<[String]>::to_vec).collect::<Vec<_>>();
    let (down, mut all) = (kinds(&side), kinds(&side[..items.min(side.len())]));
    all.extend(kinds(&top));
    // Down the side stand the first kind and then the others from the last.
    let expected: Vec<&Vec<String>> = all.iter().take(1).chain(all.iter().skip(2).rev()).collect();
    if down.iter().collect::<Vec<_>>() != expected {
        return Err(Trouble::new("the table names its kinds otherwise down its side than across its top"));
    }
    Ok(all)
}

/// The kinds as the rule tells of them; the last are the tags.
fn named(sheet: &Printed, names: Vec<Vec<String>>) -> Hinted<View> {
    let words = sheet.words();
    let last = names.len().saturating_sub(1);
    let mut view = View { kinds: Vec::new(), tag: String::new(), statements: Vec::new(), asked: Vec::new() };
    for (index, mut things) in names.into_iter().enumerate() {
        let mut kind = Kind { name: String::new(), things: Vec::new(), in_order: false };
        if index == last {
            let parted: Option<Vec<(&str, &str)>> = things.iter().map(|name| name.rsplit_once(' ')).collect();
            let parted = parted.filter(|parted| parted.windows(2).all(|two| two[0].0 == two[1].0));
            let Some(parted) = parted else { return Err(Trouble::new("the tags are not all called alike")) };
            view.tag = parted.first().map(|(tag, _)| (*tag).to_owned()).unwrap_or_default();
            things = parted.into_iter().map(|(_, symbol)| symbol.to_owned()).collect();
        } else if let Some((before, _)) = words.split_once(&format!(" in order: {}.", things.join(", "))) {
            kind.in_order = true;
            before.rsplit_once("The ").map_or("", |(_, name)| name).clone_into(&mut kind.name);
        }
        kind.things = things;
        view.kinds.push(kind);
    }
    if view.size().is_none() {
        return Err(Trouble::new("the kinds of the table do not all have as many things"));
    }
    Ok(view)
}

/// The numbered sentences above the table, or to the foot of a sheet without one, in their order.
fn numbered(sheet: &Printed, slot: Rect, end: Mm) -> Hinted<Vec<String>> {
    let middle_x = slot.x + slot.w / 2.0;
    let words = sheet.texts_in(slot);
    let level = words.iter().copied().filter(|text| text.turn.abs() < 45.0 && middle(text.rect).1 < end);
    let (left, right): (Vec<&PrintedText>, Vec<&PrintedText>) = level.partition(|text| middle(text.rect).0 < middle_x);
    let mut said: Vec<String> = Vec::new();
    let mut top = None;
    for column in [left, right] {
        for line in lines(&column) {
            let start = format!("{}. ", said.len() + 1);
            if let Some(rest) = line.text.strip_prefix(&start) {
                top.get_or_insert(line.rect.y - line.size.to_mm());
                said.push(rest.to_owned());
            } else if let (Some(last), Some(top)) = (said.last_mut(), top)
                && line.rect.y > top
            {
                last.push(' ');
                last.push_str(&line.text);
            }
        }
    }
    // A tag and its symbol stand together by a space that no line breaks.
    said.iter_mut().for_each(|text| *text = squeezed(text));
    if said.is_empty() {
        return Err(Trouble::new("no numbered statement stands above the table"));
    }
    Ok(said)
}

/// What a sentence says, if it says one thing.
fn statement(view: &View, text: &str) -> Hinted<Statement> {
    let meant = || {
        let text = text.strip_suffix('.')?;
        if let Some((a, b)) = two(view, text, " does not go with ") {
            return Some(Statement::NotSame(a, b));
        }
        if let Some((a, rest)) = text.split_once(" goes with ") {
            let a = thing(view, a)?;
            return match two(view, rest, " or with ") {
                Some((b, c)) => Some(Statement::Either(a, b, c)),
                None => Some(Statement::Same(a, thing(view, rest)?)),
            };
        }
        let (text, by) = ordered(view, text)?;
        if let Some((a, b)) = two(view, text, " comes somewhere before ") {
            return Some(Statement::Before(a, b, by));
        }
        if let Some((a, b)) = two(view, text, " comes right before ") {
            return Some(Statement::RightBefore(a, b, by));
        }
        let text = text.strip_suffix(" come one right after the other, either way round")?;
        two(view, text, " and ").map(|(a, b)| Statement::NextTo(a, b, by))
    };
    meant().ok_or_else(|| Trouble::new(format!("the statement \"{text}\" has no meaning that can be told")))
}

/// Two things, whichever of the places at which `between` stands parts their names.
fn two(view: &View, text: &str, between: &str) -> Option<(Thing, Thing)> {
    text.match_indices(between).find_map(|(at, _)| {
        let (a, b) = (text.get(..at)?, text.get(at + between.len()..)?);
        Some((thing(view, a)?, thing(view, b)?))
    })
}

/// The thing of this name; at the head of a sentence it has a capital.
fn thing(view: &View, name: &str) -> Option<Thing> {
    let wanted = capital(name);
    let all = view.kinds.iter().enumerate().flat_map(|(kind, of)| (0..of.things.len()).map(move |at| (kind, at)));
    let mut named = all.filter(|thing| capital(&view.thing(*thing)) == wanted);
    named.next().filter(|_| named.next().is_none())
}

/// A statement about the order of a kind, without the kind's name where it is said, and which kind is meant.
fn ordered<'a>(view: &View, text: &'a str) -> Option<(&'a str, usize)> {
    let mut in_order = view.kinds.iter().enumerate().filter(|(_, kind)| kind.in_order);
    let (first, _) = in_order.clone().next()?;
    if in_order.clone().count() == 1 {
        return Some((text, first));
    }
    in_order.find_map(|(at, kind)| Some((text.strip_suffix(&format!(", by the {}", kind.name))?, at)))
}

/// The things on the list at the foot.
fn asked(view: &View, sheet: &Printed, slot: Rect) -> Hinted<Vec<Thing>> {
    let list = squeezed(&after(sheet, slot, &format!("{}{}s, in this order: ", texts::READ, view.tag))?);
    let known = |name: &str| thing(view, name).ok_or_else(|| Trouble::new(format!("nothing is called \"{name}\"")));
    list.split("; ").map(known).collect()
}
