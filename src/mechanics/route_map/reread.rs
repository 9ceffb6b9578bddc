//! The map and the card, read back from paper.

use super::{CARD, MAP, Place, Task, View, Wind, texts};
use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Dot, Lattice, Looks, Printed, apart, lanes, middle, ruled};
use crate::mechanics::pictures::{single, standing, word};
use crate::mechanics::{Dressing, front};
use crate::units::{Mm, Rect};

/// The ground of a map as it is drawn: ruled squares, or roads between crossings.
struct Ground {
    rect: Rect,
    lattice: Lattice,
    roads: Vec<(usize, usize)>,
    /// Where the crossings are that a road leads to, by number.
    crossings: Vec<(usize, Dot)>,
}

pub(super) fn view(printed: &[Printed], cx: &Dressing<'_>) -> Hinted<View> {
    let (map, card) = (front(printed, MAP)?, front(printed, CARD)?);
    let looks = cx.looks()?;
    let task = task(card, cx, &looks)?;
    let field = cx.slot_on(map, "board", "field")?;
    let ground = ground(map, field, matches!(task, Task::Shortest(..)))?;
    let cols = ground.lattice.cols.len();
    let square = |at: Dot| {
        if ground.crossings.is_empty() {
            return ground.lattice.cell(at).map(|(row, col)| row * cols + col);
        }
        let far = |place: &&(usize, Dot)| apart(place.1, at).get();
        ground.crossings.iter().min_by(|a, b| far(a).total_cmp(&far(b))).map(|(number, _)| *number)
    };
    let mut places: Vec<Place> = Vec::new();
    for (picture, rect) in standing(map, ground.rect, &looks) {
        let at = square(middle(rect)).ok_or_else(|| Trouble::new("the map has no squares"))?;
        places.push(Place { at, picture, sign: None });
    }
    for text in map.texts_in(ground.rect) {
        let sign = single(text)?;
        let at = square(middle(text.rect));
        let owner = places.iter_mut().find(|place| Some(place.at) == at);
        let place = owner.ok_or_else(|| Trouble::new(format!("the sign {sign} stands on the map by itself")))?;
        if place.sign.replace(sign).is_some() {
            return Err(Trouble::new(format!("two signs stand on one square, one of them {sign}")));
        }
    }
    places.sort_by_key(|place| place.at);
    let north = map.texts_in(field).iter().any(|text| text.text.trim() == "N" && text.rect.y > ground.rect.bottom());
    let mut view = View {
        text: String::new(),
        cols,
        rows: ground.lattice.rows.len(),
        places,
        roads: ground.roads,
        north,
        task,
        say_stops: true,
    };
    let (before, after) = texts::rule(&view);
    if !card.says(&before) {
        return Err(Trouble::new(format!("the card does not say \"{before}\"")));
    }
    view.say_stops = card.says(&after);
    Ok(view)
}

/// What the card asks, from its words and pictures.
fn task(card: &Printed, cx: &Dressing<'_>, looks: &Looks) -> Hinted<Task> {
    let words = card.words();
    let picture = |wanted: &str| {
        let known = cx.theme.theme.symbols.keys().find(|name| word(name) == wanted);
        known.cloned().ok_or_else(|| Trouble::new(format!("the card names a {wanted}, which is no picture")))
    };
    let between = |from: &str, to: &str| {
        let rest = words.split_once(from)?.1;
        rest.split_once(to).map(|(inner, _)| inner.trim().to_owned())
    };
    if let Some(start) = between("Begin on the square of the ", ".") {
        return Ok(Task::Legs(picture(&start)?, legs(&words)?));
    }
    let ends = between("Go by road from the ", ", by the shortest way");
    if let Some((from, to)) = ends.as_deref().and_then(|ends| ends.split_once(" to the ")) {
        return Ok(Task::Shortest(picture(from)?, picture(to)?));
    }
    if card.says("Go straight from each picture to the next.") {
        let body = cx.slot_on(card, "portrait", "body")?;
        let mut stops = standing(card, body, looks);
        let rows = lanes(stops.iter().map(|(_, rect)| middle(*rect).1), Mm::new(4.0));
        let row = |rect: Rect| {
            let far = |lane: &&Mm| (**lane - middle(rect).1).get().abs();
            rows.iter().min_by(|a, b| far(a).total_cmp(&far(b))).map_or(0.0, |lane| lane.get())
        };
        stops.sort_by(|a, b| row(a.1).total_cmp(&row(b.1)).then(a.1.x.get().total_cmp(&b.1.x.get())));
        return Ok(Task::Bearings(stops.into_iter().map(|(name, _)| name).collect()));
    }
    Err(Trouble::new("the card gives no route"))
}

/// The lettered lines of a card: "a) two north, one east".
fn legs(words: &str) -> Hinted<Vec<Vec<(Wind, usize)>>> {
    let mut legs = Vec::new();
    for letter in 'a'..='z' {
        let Some((_, rest)) = words.split_once(&format!("{letter}) ")) else { break };
        let next = char::from_u32(u32::from(letter) + 1).unwrap_or('z');
        let end = [rest.find(&format!("{next}) ")), rest.find("Note the")].into_iter().flatten().min();
        let line = rest.get(..end.unwrap_or(rest.len())).unwrap_or_default();
        let mut leg = Vec::new();
        for piece in line.split(',') {
            let (count, wind) = piece
                .trim()
                .split_once(' ')
                .ok_or_else(|| Trouble::new(format!("\"{piece}\" is no piece of a route")))?;
            let count = texts::WORDS.iter().position(|word| *word == count);
            let wind = Wind::ALL.into_iter().find(|known| known.word() == wind.trim());
            let (Some(count), Some(wind)) = (count, wind) else {
                return Err(Trouble::new(format!("\"{piece}\" is no piece of a route")));
            };
            leg.push((wind, count));
        }
        legs.push(leg);
    }
    if legs.is_empty() { Err(Trouble::new("the card has no lines of a route")) } else { Ok(legs) }
}

/// Of all pictures in the field the one with the most straight lines is the ground.
fn ground(map: &Printed, field: Rect, roads: bool) -> Hinted<Ground> {
    let lines = |art: usize| {
        let shapes = map.shapes_of(art);
        shapes.iter().filter(|shape| field.holds(shape.rect)).filter_map(|shape| shape.segment()).collect::<Vec<_>>()
    };
    let art = (0..map.arts.len()).max_by_key(|art| lines(*art).len());
    let Some((art, rect)) = art.and_then(|art| Some((art, map.arts.get(art)?.rect))) else {
        return Err(Trouble::new("the sheet shows no map"));
    };
    if !roads {
        let (mut level, mut upright) = ruled(map.shapes_of(art), Mm::new(1.0));
        level.insert(0, rect.y);
        level.push(rect.bottom());
        upright.insert(0, rect.x);
        upright.push(rect.right());
        let lattice = Lattice::between(&(level, upright));
        return Ok(Ground { rect, lattice, roads: Vec::new(), crossings: Vec::new() });
    }
    let lines = lines(art);
    let mut lengths: Vec<f64> = lines.iter().map(|(a, b)| apart(*a, *b).get()).collect();
    lengths.sort_by(f64::total_cmp);
    let cell = Mm::new(lengths.get(lengths.len() / 2).copied().unwrap_or_default());
    let ends = || lines.iter().flat_map(|(a, b)| [*a, *b]);
    let lattice =
        Lattice { rows: lanes(ends().map(|at| at.1), cell * 0.32), cols: lanes(ends().map(|at| at.0), cell * 0.32) };
    let cols = lattice.cols.len();
    let number = |at: Dot| lattice.cell(at).map(|(row, col)| row * cols + col);
    let (mut joined, mut crossings) = (Vec::new(), Vec::new());
    for (from, to) in &lines {
        if let (Some(a), Some(b)) = (number(*from), number(*to)) {
            joined.push((a.min(b), a.max(b)));
            crossings.extend([(a, *from), (b, *to)]);
        }
    }
    joined.sort_unstable();
    joined.dedup();
    crossings.sort_by_key(|(number, _)| *number);
    crossings.dedup_by_key(|(number, _)| *number);
    Ok(Ground { rect, lattice, roads: joined, crossings })
}
