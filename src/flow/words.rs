use super::LockLoop;
use super::blocking::Reason;
use super::map::{Map, Thing};
use super::net::{Net, Opener, Where};
use crate::diag::{Anchor, PuzzleField};
use crate::ids::BoxId;
use crate::kit::{Kit, LockKind};

/// Tells a set of boxes that hold one another shut, box by box along what holds them.
pub(super) fn tell(kit: &Kit, map: &Map, net: &Net, set: &[usize], finish: bool) -> LockLoop {
    let mut clauses = Vec::new();
    let mut anchors = Vec::new();
    let mut told: Vec<usize> = Vec::new();
    let mut open: Vec<usize> = set.iter().rev().copied().collect();
    while let Some(index) = open.pop() {
        let (false, Some(item)) = (told.contains(&index), kit.boxes.get(index)) else { continue };
        told.push(index);
        anchors.push(Anchor::Box(item.id.clone()));
        match net.reason(index, set) {
            Some(Reason::Inside(outer)) => {
                let through = net.boxes.get(index).map_or(Where::Open, |item| item.stands);
                clauses.push(format!("{} stands in {}", item.name, chain(kit, net, through, outer)));
                open.push(outer);
            }
            Some(Reason::Lock(lock, held)) => {
                let lock_name = kit.locks.get(lock).map_or("a lock", |lock| lock.name.as_str());
                let word = kit.locks.get(lock).is_some_and(|lock| lock.kind == LockKind::Spoken);
                clauses.push(if word {
                    format!("{} opens when {lock_name} is said", item.name)
                } else {
                    format!("{} needs {lock_name} open", item.name)
                });
                anchors.extend(kit.locks.get(lock).map(|lock| Anchor::Lock(lock.id.clone())));
                for (opener, thing, around) in held.iter().rev() {
                    clauses.extend(opener_needs(kit, map, lock_name, *opener, *thing, &mut anchors));
                    clauses.push(lies(kit, map, net, *thing, *around));
                    open.push(*around);
                }
            }
            None => {}
        }
    }
    let mut boxes: Vec<BoxId> = set.iter().filter_map(|index| kit.boxes.get(*index)).map(|b| b.id.clone()).collect();
    boxes.sort();
    LockLoop { words: clauses.join("; "), boxes, anchors, finish }
}

fn box_name(kit: &Kit, index: usize) -> &str {
    kit.boxes.get(index).map_or("a box", |item| item.name.as_str())
}

/// What the lock's opener needs: "the brass lock opens by "In another light", which needs the torch".
fn opener_needs(
    kit: &Kit,
    map: &Map,
    lock: &str,
    opener: Opener,
    thing: usize,
    anchors: &mut Vec<Anchor>,
) -> Option<String> {
    match opener {
        Opener::Item(_) => Some(format!("{lock} opens by {}", thing_name(kit, map, thing))),
        Opener::Puzzle(puzzle) => {
            let puzzle = kit.puzzles.get(puzzle)?;
            let field = match map.things.get(thing)? {
                Thing::Part(_, part) => PuzzleField::Part(part.clone()),
                Thing::Prop(tool) => PuzzleField::Tool(tool.clone()),
                Thing::Note(_) | Thing::Letter => PuzzleField::Whole,
            };
            anchors.push(Anchor::Puzzle(puzzle.id.clone(), field));
            Some(format!("{lock} opens by \"{}\", which needs {}", puzzle.title, thing_name(kit, map, thing)))
        }
    }
}

fn thing_name(kit: &Kit, map: &Map, thing: usize) -> String {
    match map.things.get(thing) {
        Some(Thing::Prop(id)) => kit.prop(id).map_or_else(|| id.to_string(), |prop| prop.name.clone()),
        Some(Thing::Note(id)) => format!("the note {id}"),
        Some(Thing::Part(_, part)) => format!("its {}", part.replace('-', " ")),
        Some(Thing::Letter) => "the letter".into(),
        None => "a thing".into(),
    }
}

/// Where a thing lies; when it lies deeper, through which boxes.
fn lies(kit: &Kit, map: &Map, net: &Net, thing: usize, around: usize) -> String {
    let name = match map.things.get(thing) {
        Some(Thing::Part(id, part)) => {
            let title = kit.puzzle(id).map_or_else(|| id.to_string(), |puzzle| puzzle.title.clone());
            format!("the {} of \"{title}\"", part.replace('-', " "))
        }
        _ => thing_name(kit, map, thing),
    };
    let place = net.items.get(thing).copied().unwrap_or(Where::Open);
    format!("{name} lies in {}", chain(kit, net, place, around))
}

/// The boxes from a place outwards to `last`, in words.
fn chain(kit: &Kit, net: &Net, place: Where, last: usize) -> String {
    let mut names = Vec::new();
    for index in net.around(place) {
        names.push(box_name(kit, index));
        if index == last {
            break;
        }
    }
    names.join(", which stands in ")
}
