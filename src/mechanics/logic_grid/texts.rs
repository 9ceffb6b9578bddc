//! What it says: statements in words, help, hints, and how guests get to the answer.

use super::{SHEET, Statement, View, solved};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::mechanics::words::listed;
use crate::mechanics::work::{Work, counted, times};
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the sheet of statements")
}

/// What the table is for, as the sheet prints it.
pub(super) fn rule(view: &View) -> String {
    let mut kinds: Vec<String> =
        view.kinds.iter().map(|kind| kind.name.clone()).filter(|name| !name.is_empty()).collect();
    kinds.push(format!("{}s", view.tag));
    let orders: Vec<String> = view
        .kinds
        .iter()
        .filter(|kind| kind.in_order)
        .map(|kind| format!(" The {} in order: {}.", kind.name, kind.things.join(", ")))
        .collect();
    format!("There are {}. Each belongs with exactly one of every other kind.{}", listed(&kinds), orders.concat())
}

/// How the order of the answer begins.
pub(super) const READ: &str = "Read these ";

/// The order of the answer, as the sheet prints it.
pub(super) fn order(view: &View) -> String {
    let asked: Vec<String> = view.asked.iter().map(|thing| view.thing(*thing)).collect();
    format!("{READ}{}s, in this order: {}.", view.tag, asked.join("; "))
}

/// The statements as sentences.
pub(super) fn statements(view: &View) -> Vec<String> {
    let name = |thing: &(usize, usize)| view.thing(*thing);
    // One kind in order needs no naming; of several, guests must know which is meant.
    let several = view.kinds.iter().filter(|kind| kind.in_order).count() > 1;
    let by = |kind: &usize| match view.kinds.get(*kind) {
        Some(kind) if several => format!(", by the {}", kind.name),
        _ => String::new(),
    };
    view.statements
        .iter()
        .map(|statement| {
            let text = match statement {
                Statement::Same(a, b) => format!("{} goes with {}.", name(a), name(b)),
                Statement::NotSame(a, b) => format!("{} does not go with {}.", name(a), name(b)),
                Statement::Either(a, b, c) => format!("{} goes with {} or with {}.", name(a), name(b), name(c)),
                Statement::Before(a, b, kind) => {
                    format!("{} comes somewhere before {}{}.", name(a), name(b), by(kind))
                }
                Statement::RightBefore(a, b, kind) => {
                    format!("{} comes right before {}{}.", name(a), name(b), by(kind))
                }
                Statement::NextTo(a, b, kind) => {
                    format!("{} and {} come one right after the other, either way round{}.", name(a), name(b), by(kind))
                }
            };
            capital(&text)
        })
        .collect()
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "The {} statements on {} leave one way in which all things go together. {}",
        view.statements.len(),
        name(cx),
        order(view)
    )
}

pub(super) fn work(view: &View) -> Option<Work> {
    let steps = view.size()?.steps(&view.clues())?;
    let trial = match (steps.tried, steps.open) {
        (0, 0) => "No guess is needed.".to_owned(),
        (tried, 0) => format!("Where nothing else leads on, they must suppose something {}.", times(tried)),
        (_, open) => format!("{} can be found only by trying for long.", capital(&counted(open, "pair"))),
    };
    let again = if steps.rounds > 1 { ", since a tick makes an older statement tell more" } else { "" };
    let says = format!("Guests go through the statements {}{again}. {trial}", times(steps.rounds));
    Some(Work::new(steps.weight(), says))
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let sheet = name(cx);
    HintLadder {
        nudge: format!("Everything needed stands on {sheet}. Take a pencil and use the table."),
        method: format!(
            "For each statement on {sheet}, put a cross where two things cannot belong together and a tick where they \
             do. A tick puts crosses into the rest of its row and column of that square."
        ),
        giveaway: together(view).map_or_else(
            || general(view, cx),
            |rows| {
                format!(
                    "These go together on {sheet}: {rows}. Only the {tag}s are left to find. Set them in the order at the \
                     foot on {}.",
                    cx.lock_name,
                    tag = view.tag
                )
            },
        ),
    }
}

/// The longest list of what goes together that leaves a hint small enough for its token.
const LIST: usize = 115;

/// What goes together, but for the tags: "Ida, the lamp, two o'clock; …". None where the statements do not settle it, or
/// where it is too long for a hint.
fn together(view: &View) -> Option<String> {
    let (size, only) = (view.size()?, solved::whole(view)?);
    let row = |row: usize| {
        let thing = |kind: usize| {
            let at = only.get(kind)?.iter().position(|other| *other == row)?;
            Some(view.thing((kind, at)))
        };
        (0..size.kinds - 1).filter_map(thing).collect::<Vec<_>>().join(", ")
    };
    let rows = (0..size.items).map(row).collect::<Vec<_>>().join("; ");
    (rows.chars().count() <= LIST && size.kinds > 2).then_some(rows)
}

fn general(view: &View, cx: &Dressing<'_>) -> String {
    format!(
        "Where a row has crosses in all cells of a square but one, tick that one. Carry every tick over: what goes with one \
         goes with the other. Set the {}s in the order at the foot on {}.",
        view.tag, cx.lock_name
    )
}

pub(super) const HELP: &str = "\
## What it does
A sheet names three or four kinds of things: say who came, what they brought, when, and the tag that each wears. \
Statements tell which belong together, and a table waits for ticks and crosses. At the foot stand the things whose tags \
are the answer, in order. The statements are made by chance for the answer and thinned out until each is needed.

## Setup
- `kinds`: two or three kinds, each with a `name` in the plural and 3 to 5 `things` as they stand in a sentence; all kinds have as \
many. A kind whose things come one after another (hours, floors) is marked `in_order: true`, and allows statements such \
as \"comes before\". The tags are one kind more, made by the program with the symbols of the answer and some others.
- `tag`: what a tag is called, in the singular, such that an s makes it many.
- `spare`: statements beyond those that are needed; they make it easier.
- `work`: `Light`: more statements that say straight what belongs together. `Fair`: some of each form. `Deep`: none of \
those, unless it cannot be done without, and of several sets the one that takes the most readings.

## Example
(
    kinds: [
        (name: \"ringers\", things: [\"Ida\", \"Jonas\", \"Maud\", \"Piet\"]),
        (name: \"bells\", things: [\"the cracked bell\", \"the great bell\", \"the green bell\", \"the small bell\"]),
        (name: \"landings\", things: [\"the first landing\", \"the second landing\", \"the third landing\", \"the fourth landing\"], in_order: true),
    ],
    tag: \"badge\",
)

## Traps
- A second solution in which an asked tag differs: several readings. One that differs elsewhere is remarked.
- Statements that contradict one another: no reading.
- A statement that follows from the others is remarked; it does no harm.";
