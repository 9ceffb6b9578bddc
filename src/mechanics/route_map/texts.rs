//! What it says: help, rules, work, hints, and how guests get to the answer.

use super::{CARD, MAP, Task, View, Wind};
use crate::kit::HintLadder;
use crate::mechanics::pictures::word;
use crate::mechanics::words::listed;
use crate::mechanics::work::{Work, counted, times};
use crate::mechanics::{Dressing, paper};
use crate::readings::Budget;
use crate::script::capital;

/// Numbers as words: a digit on the card might be taken for one of the answer.
pub(super) const WORDS: [&str; 13] =
    ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

pub(super) fn map<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(MAP, "the map")
}

pub(super) fn card<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(CARD, "the card with the route")
}

/// What stands beside the pictures, as guests call it: a "sign" might be the picture.
fn sign(view: &View) -> &'static str {
    let mut signs = view.places.iter().filter_map(|place| place.sign).peekable();
    let any = signs.peek().is_some();
    if any && signs.clone().all(|sign| sign.is_ascii_digit()) {
        "digit"
    } else if any && signs.all(char::is_alphabetic) {
        "letter"
    } else {
        "sign"
    }
}

/// The rule as the card prints it, before the legs and after them.
pub(super) fn rule(view: &View) -> (String, String) {
    let sign = sign(view);
    match &view.task {
        Task::Legs(start, legs) => (
            format!(
                "Begin on the square of the {}.{} Never count the square on which you stand.",
                word(start),
                if legs.len() > 1 { " Each line goes on where the last one ended." } else { "" }
            ),
            if view.say_stops {
                format!("Note the {sign} where each line ends, and nothing on the way.")
            } else {
                format!("Note the {sign}s.")
            },
        ),
        Task::Shortest(from, to) => (
            format!("Go by road from the {} to the {}, by the shortest way there is.", word(from), word(to)),
            format!("A step is from one dot or picture to the next. Note each {sign} that you pass, in order."),
        ),
        Task::Bearings(_) => (
            "Go straight from each picture to the next.".into(),
            if view.north {
                "Note the way each time: north is up, east right, south down, west left.".into()
            } else {
                "Note the way each time: up, right, down or left.".into()
            },
        ),
    }
}

/// The legs as the card lists them.
pub(super) fn legs(view: &View) -> Vec<String> {
    let Task::Legs(_, legs) = &view.task else { return Vec::new() };
    let piece =
        |(wind, count): &(Wind, usize)| format!("{} {}", WORDS.get(*count).copied().unwrap_or("many"), wind.word());
    legs.iter()
        .enumerate()
        .map(|(index, leg)| {
            format!("{}) {}", paper::place_letter(index), leg.iter().map(piece).collect::<Vec<_>>().join(", "))
        })
        .collect()
}

pub(super) fn work(view: &View) -> Work {
    if !view.whole() {
        return Work::new(0, "The map is not whole.");
    }
    let signs = view.places.iter().filter(|place| place.sign.is_some()).count();
    match &view.task {
        Task::Legs(_, legs) => {
            let squares: usize = legs.iter().flatten().map(|(_, count)| count).sum();
            let pieces: usize = legs.iter().map(Vec::len).sum();
            let says = format!(
                "The way leads over {} in {} and stops {}. {} not asked for.",
                counted(squares, "square"),
                counted(pieces, "straight piece"),
                times(legs.len()),
                others_are(signs.saturating_sub(legs.len()))
            );
            Work::new(squares + 2 * pieces, says)
        }
        Task::Shortest(from, to) => {
            let (net, start, goal) = (view.net(), view.of(from), view.of(to));
            let far = start.first().map(|start| net.distances(*start)).unwrap_or_default();
            let length = goal.first().and_then(|goal| far.get(*goal).copied().flatten()).unwrap_or_default();
            // Whoever makes sure looks at every crossing that is no farther than the goal, and at each road from it.
            let near = (0..far.len()).filter(|at| far.get(*at).copied().flatten().is_some_and(|steps| steps < length));
            let looks: usize = near.map(|at| net.from(at).len()).sum();
            let mut stops = 0;
            if let (Some(start), Some(goal)) = (start.first(), goal.first()) {
                let count = &mut |way: &[usize]| {
                    stops = way.iter().filter(|at| view.sign(**at).is_some()).count();
                    false
                };
                // A budget too small leaves the count at none; the reading says so as well.
                let _ = net.each_shortest(*start, *goal, &mut Budget::default(), count);
            }
            let says = format!(
                "The shortest way is {} long and passes {}. To be sure of it, guests look along {}. {} not on that way.",
                counted(length, "step"),
                counted(stops, "sign"),
                counted(looks, "road"),
                others_are(signs.saturating_sub(stops))
            );
            Work::new(looks, says)
        }
        Task::Bearings(stops) => {
            let others = view.places.len().saturating_sub(stops.len());
            let says = format!(
                "Guests look for {} among {} that nobody asks for.",
                counted(stops.len(), "place"),
                counted(others, "other")
            );
            // Each is looked for among all.
            Work::new(stops.len() * view.places.len(), says)
        }
    }
}

fn others_are(signs: usize) -> String {
    match signs {
        0 => "No other signs on the map are".to_owned(),
        1 => "One other sign on the map is".to_owned(),
        _ => format!("{signs} other signs on the map are"),
    }
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let (before, after) = rule(view);
    let route = match &view.task {
        Task::Legs(..) => format!(" {}.", legs(view).join("; ")),
        Task::Shortest(..) => String::new(),
        Task::Bearings(stops) => {
            format!(" The pictures: {}.", stops.iter().map(|stop| word(stop)).collect::<Vec<_>>().join(", "))
        }
    };
    let stops = stops(view);
    let stops = if stops.is_empty() { String::new() } else { format!(" It comes to {}.", listed(&stops)) };
    format!("With {} guests find their way on {}. {before}{route} {after}{stops}", card(cx), map(cx))
}

/// The places at which a sign is noted, with their signs, in order.
fn stops(view: &View) -> Vec<String> {
    let mut squares = Vec::new();
    match &view.task {
        Task::Legs(start, legs) => {
            let mut here = view.of(start).first().copied();
            for leg in legs {
                for (wind, count) in leg {
                    for _ in 0..(*count).min(view.cols.max(view.rows)) {
                        here = here.and_then(|at| view.step(at, *wind));
                    }
                }
                squares.extend(here);
            }
        }
        Task::Shortest(from, to) => {
            if let (Some(from), Some(to)) = (view.of(from).first(), view.of(to).first()) {
                let keep = &mut |way: &[usize]| {
                    squares = way.to_vec();
                    false
                };
                // A budget too small leaves the list empty; the reading says so as well.
                let _ = view.net().each_shortest(*from, *to, &mut Budget::default(), keep);
            }
        }
        Task::Bearings(_) => {}
    }
    let place = |at: &usize| {
        let place = view.places.iter().find(|place| place.at == *at)?;
        Some(format!("the {} ({})", word(&place.picture), place.sign?))
    };
    squares.iter().filter_map(place).collect()
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let (map, card, lock) = (map(cx), card(cx), cx.lock_name);
    let nudge = format!("{} and {card} belong together. Lay {map} so that its title can be read.", capital(map));
    let (method, giveaway) = match &view.task {
        Task::Legs(start, _) => (
            format!("Put a finger on the {} on {map} and follow {card}, square by square.", word(start)),
            format!(
                "From the {}, move as line a) of {card} says; the arrow with the N shows north. The square on which you \
                 stop shows a sign: write it down. Go on from there with each further line, and set what you wrote on \
                 {lock}.",
                word(start)
            ),
        ),
        Task::Shortest(from, to) => (
            format!(
                "Find the {} and the {} on {map}, and compare the roads between them, dot by dot.",
                word(from),
                word(to)
            ),
            format!(
                "Write on each crossing of {map} how many steps it is from the {}, beginning with those next to it, until \
                 you come to the {}. Go back along falling numbers: that is the way. Copy its signs from the {} on, and \
                 set them on {lock}.",
                word(from),
                word(to),
                word(from)
            ),
        ),
        Task::Bearings(stops) => (
            format!(
                "Find the pictures of {card} on {map}, one after another. Only the direction from each to the next counts."
            ),
            format!(
                "Put a finger on the {} on {map}, then go straight to each next picture of {card}. Each time note whether \
                 the finger went up, down, left or right, and push {lock} that way.",
                stops.first().map(|stop| word(stop)).unwrap_or_default()
            ),
        ),
    };
    HintLadder { nudge, method, giveaway }
}

pub(super) const HELP: &str = "\
## What it does
A map shows places, some with a digit or letter. A card, found elsewhere, gives a route. Over squares it leads from stop \
to stop by the compass, and the signs at the stops are the answer. By roads it asks for the shortest way from one place \
to another, and the signs on it are the answer; the map is made so that one way is shortest. For a lock that is pushed \
the card lists pictures, and the side to which each lies from the one before is pushed: up, right, down, left.

## Setup
- `text`: a line of the story on the card; may be empty.
- `route`: `Squares` or `Roads`; a lock that is pushed has its own kind.
- `cols`, `rows`: squares, or crossings of roads, from west to east and from north to south, 5 to 12.
- `others`: places that the route does not ask for, up to 24.
- `pictures`: the theme's symbols at the places that the card does not name; empty: all others, by chance. Leave out those that mark a lock.
- `work`: `Light`: straight legs, few roads. `Fair`: legs with a bend, more roads. `Deep`: legs with two bends, many roads. \
For a lock that is pushed, `others` makes it lighter or deeper.
- `start`, `goal`: the theme's symbols at which the route begins and, by roads, ends; empty: by chance.
- `north`: whether the map has a north mark.
- `say_stops`: whether the card says that only stops count, and not what is passed.

## Example
(
    text: \"The postman's round:\",
    route: Squares,
    cols: 8,
    rows: 8,
    others: 10,
    work: Fair,
)

## Traps
- Two shortest ways: each gives a reading.
- No north mark: the map may lie with any side up.
- Signs that are passed but are no stops count for some guests, unless the card says that they do not.
- A place that the card names and that stands on the map twice.
- A route too long for the map is refused.";
