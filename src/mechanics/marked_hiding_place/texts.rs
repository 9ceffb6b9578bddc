//! What it says: help, preparation, hints, and how guests get to the answer.

use super::{Hiding, Teller, View};
use crate::kit::HintLadder;
use crate::kit::material::{Need, PrepStep};
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) const HELP: &str = "\
## What it does
Several like things stand in the room (parcels, bells, drawers, cups), each with a tag that shows a sign. A note, or the \
story letter, names one sign; under, behind or inside the thing that wears it lies the key of a padlock, or a slip with \
a code.

## Setup
- `things`: 2 to 24 things. `name`: what host and guests call it. `sign`: a symbol of the theme; empty: drawn by chance. \
`word`: how the tag and the note call that sign; empty: the symbol's name.
- `place`: `Under`, `Behind`, `Inside`, or `InFood`, which is allowed and gets a finding: hard things in food break teeth \
and choke. Put the key under a sealed wrapper or beside the plate.
- `told_by`: `Card`: a note is printed. `Letter`: your story letter or another text must hold the sentence of `note`.
- `note`: the sentence that names the sign; empty: a plain one. Your own must hold the word of the sign, and the word of \
no other sign.
- `holds`: `Key`: the answer is the name of the thing, exactly as in `things`, and the lock takes a key. `Slip`: the answer \
is the lock's code; the host writes it on a slip.
- `at`: only with `Slip`: the name of the thing at which the slip lies.

## Example
(
    things: [
        (name: \"the round parcel\", sign: \"owl\"),
        (name: \"the long parcel\", sign: \"bell\"),
        (name: \"the flat parcel\", sign: \"star\", word: \"north star\"),
    ],
    place: Under,
)

## Traps
- Two things wear the sign that the note names, or the note names the signs of two.
- A thing's own name holds the word: a \"bell jar\" when the note says bell.
- The note names no sign.
- The key inside food gets a remark and a finding.
- A key that opens another lock cannot be seen here: the findings of the whole kit tell of it.";

/// How the step of the tags begins, up to the list of which goes where.
pub(super) const TIE: &str = "Punch each tag at the ring printed on it, thread a string through, and tie the tags on so that all \
                              can be seen: ";

pub(super) fn prep(view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
    let tags: Vec<String> = view.things.iter().map(|thing| format!("{} on {}", thing.word, thing.name)).collect();
    #[expect(clippy::cast_precision_loss, reason = "at most HIDING_THINGS")]
    let count = view.things.len() as f64;
    let mut steps = vec![PrepStep {
        key: "tags",
        what: format!("{TIE}{}.", tags.join("; ")),
        needs: vec![
            // Six tags fit on a sheet.
            Need { material: "card-paper", amount: (count / 6.0).ceil() },
            Need { material: "string", amount: (count * 0.3).ceil() },
            Need { material: "scissors", amount: 1.0 },
            Need { material: "hole-punch", amount: 1.0 },
        ],
        hands: 1.0 + count,
        wait: 0.0,
        after: vec![],
    }];
    let things = cx.name("things", "the tagged things");
    let how = match view.place {
        Hiding::Under => ", upside down where they are open, so that nobody sees what lies under one",
        _ => "",
    };
    steps.push(PrepStep {
        key: "set",
        what: format!("Set {things} out as guests will find them{how}."),
        needs: vec![],
        hands: 1.0,
        wait: 0.0,
        after: vec!["tags"],
    });
    let at = view.spot().map_or("the thing that the answer names", |thing| thing.name.as_str());
    let place = view.place.word();
    let what = match (&view.slip, view.place) {
        (Some(slip), _) => {
            let code: String = slip.symbols.iter().collect();
            format!("Write {code} on a slip of paper and hide it {place} {at}.")
        }
        (None, Hiding::InFood) => {
            format!(
                "Wrap the key, then hide it {place} {at}; better, put it under its sealed wrapper or beside the plate."
            )
        }
        (None, _) => format!("Hide the key of {} {place} {at}. Try it in the lock first.", cx.lock_name),
    };
    let needs = if view.slip.is_some() {
        vec![Need { material: "plain-paper", amount: 1.0 }, Need { material: "pencil", amount: 1.0 }]
    } else {
        vec![]
    };
    steps.push(PrepStep { key: "hide", what, needs, hands: 3.0, wait: 0.0, after: vec!["set"] });
    if view.told_by == Teller::Letter {
        let what = format!("Read once more, in the letter or the note, what tells guests of it: “{}”", view.note);
        steps.push(PrepStep { key: "tell", what, needs: vec![], hands: 1.0, wait: 0.0, after: vec![] });
    }
    steps
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    let teller = match view.told_by {
        Teller::Card => capital(cx.name("note", "the note")),
        Teller::Letter => "The letter".into(),
    };
    match view.spot() {
        Some(thing) => format!(
            "{teller} says: “{}” {} wears the sign of the {}; the {} lies {} it.",
            view.note,
            capital(&thing.name),
            thing.word,
            view.hidden(),
            view.place.word()
        ),
        None => format!("{teller} says: “{}”", view.note),
    }
}

pub(super) fn reset(view: &View, cx: &Dressing<'_>) -> String {
    let things = cx.name("things", "the tagged things");
    let (hidden, place) = (view.hidden(), view.place.word());
    let spot = view
        .spot()
        .map_or_else(|| "the right thing".to_owned(), |thing| format!("{}, which wears “{}”", thing.name, thing.word));
    let how = match view.place {
        Hiding::Under => ", upside down where they are open",
        _ => "",
    };
    format!(
        "See that each of {things} wears its own tag, and set them out as before{how}. Put the {hidden} back {place} {spot}."
    )
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let things = cx.name("things", "the tagged things");
    let (teller, again) = match view.told_by {
        Teller::Card => (cx.name("note", "the note"), "Read it once more."),
        Teller::Letter => ("the letter", "Read the letter once more."),
    };
    let last = match view.spot() {
        Some(thing) => {
            format!("The sign is the {}. Look {} the thing that wears it.", thing.word, view.place.word())
        }
        None => format!("Look {} the thing that wears the sign.", view.place.word()),
    };
    HintLadder {
        nudge: format!("Look at {things}. What tells them apart?"),
        method: format!("{} names a sign. {again} Which of {things} wears it?", capital(teller)),
        giveaway: last,
    }
}
