use crate::script::capital;
use serde::Serialize;

use super::words::{list, sentence};
use super::{Source, sheets, spoken};
use crate::diag::Step;
use crate::face::{Audience, Piece};
use crate::kit::{BoxDef, Kit, Lock, Place, PropRole, Puzzle};
use crate::mechanics;
use crate::mechanics::words::bare;
use crate::party::is_copy;

/// A spot or a box with what goes there.
#[derive(Clone, Debug, Serialize)]
pub(super) struct PlaceText {
    name: String,
    about: String,
    things: Vec<Thing>,
    /// What to do when all is in place.
    after: Vec<String>,
}

impl PlaceText {
    /// The same in a line, for putting it back.
    pub(super) fn again(&self) -> String {
        let things: Vec<&str> = self.things.iter().map(|thing| thing.name.as_str()).collect();
        // Where it stands is told in its spot's own line.
        let told = |line: &String| line.split(" Its spot:").next().unwrap_or(line).to_owned();
        let after: String = self.after.iter().map(|line| format!(" {}", told(line))).collect();
        format!("{}: {}.{after}", self.name, things.join("; "))
    }
}

/// Something that is laid in a place.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Thing {
    name: String,
    about: String,
}

/// Boxes from the innermost outwards, then the spots in the kit's order.
pub(super) fn places(source: &Source<'_>) -> Vec<PlaceText> {
    let kit = &source.opened.kit;
    let mut found = Vec::new();
    let mut boxes: Vec<(usize, usize, &BoxDef)> =
        kit.boxes.iter().enumerate().map(|(at, item)| (depth(source, item), at, item)).collect();
    boxes.sort_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)));
    for (_, _, item) in boxes {
        found.push(PlaceText {
            name: format!("Into {}", source.say(&item.name)),
            about: about(source, item),
            things: things(source, &Place::Box(item.id.clone())),
            after: hung(source, item).chain([shut(source, item)]).chain(worn(kit, item)).collect(),
        });
    }
    for spot in &kit.spots {
        let things = things(source, &Place::Spot(spot.id.clone()));
        if things.is_empty() {
            continue;
        }
        found.push(PlaceText {
            name: capital(&source.say(&spot.name)),
            about: source.say(&spot.about),
            things,
            after: Vec::new(),
        });
    }
    if source.prep.pencils > 0 && !matches!(kit.letter.place, Some(Place::Spot(_))) {
        let (name, about) = pencils(source);
        let things = vec![Thing { name, about: about.to_owned() }];
        found.push(PlaceText { name: "Where the guests sit".into(), about: String::new(), things, after: Vec::new() });
    }
    found.extend(tokens(source));
    found
}

/// The pencils of one group, with what they are for.
fn pencils(source: &Source<'_>) -> (String, &'static str) {
    match source.prep.pencils {
        1 => ("1 pencil".to_owned(), "to write and tick with"),
        some => (format!("{some} pencils"), "to write and tick with, one for two guests"),
    }
}

/// What the host should know of a box, and of the envelope that it is.
fn about(source: &Source<'_>, item: &BoxDef) -> String {
    let printed = source.opened.kit.printed_as(item).map(|prop| source.say(&prop.about));
    let about = source.say(item.about.trim());
    // It says what will do as the box, and another may be chosen.
    let will_do = if about.is_empty() { about } else { format!("Will do: {about}") };
    let known = [Some(will_do), printed].into_iter().flatten();
    let known: Vec<String> = known.filter(|text| !text.trim().is_empty()).collect();
    match known.as_slice() {
        [only] => only.clone(),
        several => several.iter().map(|text| sentence(text)).collect::<Vec<_>>().join(" "),
    }
}

/// Where the hint tokens lie: those that are open from the start, and those that the host keeps, with what else lies there.
fn tokens(source: &Source<'_>) -> Vec<PlaceText> {
    let kit = &source.opened.kit;
    if kit.puzzles.is_empty() {
        return Vec::new();
    }
    let open = usize::from(kit.levels.of(source.party.level).open_steps).min(Step::ALL.len());
    let dots = |steps: &[Step]| -> String {
        let counts: Vec<String> = steps.iter().map(|step| step.number().to_string()).collect();
        format!("{} {}", list(&counts), if counts == ["1"] { "dot" } else { "dots" })
    };
    let (lie, kept) = Step::ALL.split_at(open);
    let mut found = Vec::new();
    let place = |name: String, what: String, about: &str| PlaceText {
        name,
        about: String::new(),
        things: vec![Thing { name: what, about: about.to_owned() }],
        after: Vec::new(),
    };
    if open > 0 {
        let what = format!("The tokens with {} of every lock", dots(lie));
        found.push(place(format!("Beside {}", beside(source)), what, "the words up; they lie open from the start"));
    }
    if !kept.is_empty() {
        let what = format!("The tokens with {} of every lock", dots(kept));
        let about =
            "in rows behind you or in a tray, one row for each mark, dots rising, mark and dots up; no guest sees them";
        found.push(place("Where you sit".to_owned(), what, about));
    }
    let mut by_you: Vec<Thing> = Vec::new();
    for lock in kit.words().1 {
        let slip = source.party.piece(&format!("slip-{}", lock.id));
        by_you.extend(slip.map(|slip| Thing { name: slip.label.clone(), about: "from the host’s sheets".to_owned() }));
    }
    by_you.push(Thing { name: "This guide, and a watch".to_owned(), about: "no guest sees the guide".to_owned() });
    match found.last_mut().filter(|_| !kept.is_empty()) {
        Some(seat) => seat.things.extend(by_you),
        None => found.push(PlaceText {
            name: "Where you sit".to_owned(),
            about: String::new(),
            things: by_you,
            after: Vec::new(),
        }),
    }
    found
}

/// Beside which box open tokens lie.
pub(super) fn beside(source: &Source<'_>) -> String {
    let kit = &source.opened.kit;
    kit.box_def(&kit.finish.opens).map_or_else(|| "the table".into(), |item| source.say(&item.name))
}

/// In how many boxes a box lies; a ring of boxes is a finding and ends here at their number.
fn depth(source: &Source<'_>, item: &BoxDef) -> usize {
    let kit = &source.opened.kit;
    let mut depth = 0;
    let mut place = &item.place;
    while let Place::Box(id) = place {
        depth += 1;
        match kit.box_def(id) {
            Some(outer) if depth <= kit.boxes.len() => place = &outer.place,
            _ => break,
        }
    }
    depth
}

/// What hangs on the locks of a box and does not lie in it, puzzle by puzzle.
fn hung<'a>(source: &'a Source<'_>, item: &'a BoxDef) -> impl Iterator<Item = String> + 'a {
    source.opened.kit.puzzles.iter().flat_map(move |puzzle| {
        let inside = Place::Box(item.id.clone());
        let parts = puzzle.parts.iter().filter(move |(part, at)| **at == inside && on_locks(puzzle, part));
        parts.map(move |(part, _)| {
            let name = part_name(source, puzzle, part);
            format!("Hang {name} ({}) on the locks, not inside.", for_lock(source, puzzle, part))
        })
    })
}

/// What the box and its locks wear, to be seen to once more: without it guests cannot tell what opens with which answer.
fn worn(kit: &Kit, item: &BoxDef) -> Option<String> {
    let tags = kit.tagged().filter(|lock| item.locks.contains(&lock.id)).count();
    let tags = match tags {
        0 => None,
        1 => Some("the padlock wears its tag"),
        _ => Some("each padlock wears its tag"),
    };
    let label = item.label.is_some().then_some("the label is on the outside");
    let seen: Vec<&str> = tags.into_iter().chain(label).collect();
    (!seen.is_empty()).then(|| format!("{}.", capital(&seen.join(", and "))))
}

/// Whether a part hangs on the locks of the box that the kit gives as its place.
fn on_locks(puzzle: &Puzzle, part: &str) -> bool {
    mechanics::find(&puzzle.mechanic).is_ok_and(|mechanic| mechanic.on_locks().contains(&part))
}

fn shut(source: &Source<'_>, item: &BoxDef) -> String {
    let kit = &source.opened.kit;
    let locks: Vec<String> = item
        .locks
        .iter()
        .filter_map(|id| kit.lock(id))
        .map(|lock| {
            let name = source.say(&lock.name);
            with_mark(name, lock)
        })
        .collect();
    let stands = stands(source, &item.place);
    if let Some(words) = spoken::only(source, item) {
        return format!("Close it: it has no padlock, and opens when somebody says {words}. {stands}");
    }
    match locks.as_slice() {
        [] => format!("Close it; it has no lock. {stands}"),
        [only] => format!("Shut it with {only}. {stands}"),
        _ if item.hasp => format!("Close the hasp and hang on it {}. {stands}", list(&locks)),
        _ => format!("Shut it with {}. {stands}", list(&locks)),
    }
}

/// A lock's name with its mark in words, where the name does not say it.
pub(super) fn with_mark(name: String, lock: &Lock) -> String {
    let said = lock.mark.is_empty() || name.to_lowercase().contains(&lock.mark.to_lowercase());
    if said { name } else { format!("{name} ({})", lock.mark) }
}

/// Where a box goes when it is shut, as a sentence.
fn stands(source: &Source<'_>, place: &Place) -> String {
    let kit = &source.opened.kit;
    match place {
        Place::Spot(id) => match kit.spot(id) {
            Some(spot) if spot.person => format!("It goes to {}.", source.say(&spot.name)),
            spot => format!("Its spot: {}.", spot.map_or_else(|| id.to_string(), |spot| source.say(&spot.name))),
        },
        Place::Box(_) => format!("It lies {}.", place_name(source, place)),
    }
}

/// A place in a sentence: "at the mantelpiece", "in the oak chest".
pub(super) fn place_name(source: &Source<'_>, place: &Place) -> String {
    let kit = &source.opened.kit;
    match place {
        Place::Spot(id) => match kit.spot(id) {
            Some(spot) if spot.person => format!("with {}", source.say(&spot.name)),
            Some(spot) => format!("at {}", source.say(&spot.name)),
            None => format!("at {id}"),
        },
        Place::Box(id) => format!("in {}", source.say(kit.box_def(id).map_or(id.as_str(), |item| &item.name))),
    }
}

/// Everything that lies in a place, in the order letter, notes, parts of puzzles, props, boxes.
fn things(source: &Source<'_>, place: &Place) -> Vec<Thing> {
    let kit = &source.opened.kit;
    let mut found = Vec::new();
    let mut add = |name: &str, about: String| found.push(Thing { name: capital(name), about });
    if kit.letter.place.as_ref() == Some(place) {
        add("the letter", String::new());
    }
    for (note, text) in kit.notes.iter().zip(&source.party.script.notes) {
        if note.place == *place {
            // As below the piece: a title alone reads like a place, such as "In the bait tin".
            let title = text.title.text();
            let plain = if title.is_empty() { note.id.as_str() } else { &title };
            let closing = note.id == kit.finish.card;
            let about = if closing { "write on its line where the treat is" } else { "" };
            add(source.party.piece(note.id.as_str()).map_or(plain, |piece| caption(piece)), about.to_owned());
        }
    }
    for puzzle in &kit.puzzles {
        let shut_in = matches!(place, Place::Box(_));
        let lies = |part: &str| !(shut_in && on_locks(puzzle, part));
        for (part, _) in puzzle.parts.iter().filter(|(part, at)| *at == place && lies(part)) {
            add(&part_name(source, puzzle, part), for_lock(source, puzzle, part));
            for copy in copies(source, puzzle.id.as_str()).filter(|copy| copy.part == *part) {
                add(&in_large_print(copy), READ_BESIDE.to_owned());
            }
        }
    }
    // A box that the kit prints is told as the box.
    for prop in kit.props.iter().filter(|prop| prop.place == *place && kit.as_box(prop).is_none()) {
        let role = match &prop.role {
            PropRole::Tool => "tool",
            PropRole::Key(_) => "key",
            PropRole::Decoration => "decoration, no clue",
            PropRole::Decoy => "no clue, though it may look like one",
            PropRole::Treat => "the treat",
        };
        let about = sentence(&source.say(prop.about.trim()));
        let printed = if prop.printed.is_some() { "from the sheets, " } else { "" };
        let about = if about.is_empty() { format!("{printed}{role}") } else { format!("{printed}{role}. {about}") };
        add(&source.say(&prop.name), about);
        for copy in copies(source, &format!("prop-{}", prop.id)) {
            add(&in_large_print(copy), READ_BESIDE.to_owned());
        }
    }
    if source.prep.pencils > 0 && kit.letter.place.as_ref() == Some(place) && matches!(place, Place::Spot(_)) {
        let (name, about) = pencils(source);
        add(&name, about.to_owned());
    }
    for item in kit.boxes.iter().filter(|item| item.place == *place) {
        let printed = if kit.printed_as(item).is_some() { "from the sheets, " } else { "" };
        add(&source.say(&item.name), format!("{printed}filled and shut as above"));
        let label = format!("label-{}", item.id);
        for copy in copies(source, "labels").filter(|copy| copy.id.starts_with(&label)) {
            add(&in_large_print(copy), READ_BESIDE.to_owned());
        }
    }
    found
}

/// What is done with a copy in large print.
const READ_BESIDE: &str = "in large print, for which the other has no room: guests read this one";

/// The copies of a group's pieces from which words are read in large print.
fn copies<'a>(source: &'a Source<'_>, group: &str) -> impl Iterator<Item = &'a Piece> {
    let group = group.to_owned();
    source.party.pieces.iter().filter(move |piece| is_copy(piece) && piece.group == group)
}

fn in_large_print(copy: &Piece) -> String {
    format!("{}, to read beside it", titled(called(copy), copy.title()))
}

/// What a part is called in preparation and captions, with the title that a single printed piece of it bears: the
/// caption goes when the piece is cut out.
fn part_name(source: &Source<'_>, puzzle: &Puzzle, part: &str) -> String {
    let guests = source.party.pieces.iter().filter(|piece| piece.audience == Audience::Players);
    let mut printed = guests.filter(|piece| piece.group == puzzle.id.as_str() && piece.part == part);
    let Some(first) = printed.next() else {
        let known = mechanics::find(&puzzle.mechanic).ok().and_then(|mechanic| mechanic.meta().part(part));
        let own = source.party.script.puzzle(&puzzle.id).and_then(|text| text.names.get(part));
        let plain = known.map_or(part, |known| known.name);
        let name = own.map_or_else(|| source.opened.theme.dressing(&puzzle.mechanic, part, plain), String::as_str);
        return capital(bare(name));
    };
    let title = if printed.next().is_none() { first.title() } else { None };
    titled(called(first), title)
}

/// What a piece is called by its caption, without which of several it is.
pub(super) fn called(piece: &Piece) -> &str {
    piece.label.split(':').next().unwrap_or(&piece.label)
}

/// What stands below a piece, without what to do with it.
fn caption(piece: &Piece) -> &str {
    piece.label.split(" (").next().unwrap_or(&piece.label)
}

/// A piece's name with the title that it bears, where that says something else.
pub(super) fn titled(name: &str, title: Option<String>) -> String {
    match title {
        Some(title) if !title.eq_ignore_ascii_case(name) => format!("{name} “{title}”"),
        _ => name.to_owned(),
    }
}

/// Which lock a part is for: the mark that it wears, or the lock whose mark others wear.
fn for_lock(source: &Source<'_>, puzzle: &Puzzle, part: &str) -> String {
    match source.opened.kit.lock(&puzzle.opens) {
        Some(lock) if sheets::wears(source, puzzle, part, &lock.mark) => format!("mark: {}", lock.mark),
        Some(lock) => format!("for {}", source.say(&lock.name)),
        None => String::new(),
    }
}
