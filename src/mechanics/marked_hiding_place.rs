//! `marked-hiding-place`: of several like things one wears the sign that a note names; the key lies there.

mod draw;
mod lay;
mod read;

use serde::{Deserialize, Serialize};

use super::words::capital;
use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::Hinted;
use crate::face::Piece;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct MarkedHidingPlace;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// The things, and the sign that each wears.
    pub things: Vec<Thing>,
    /// Where at the thing the key lies.
    pub place: Hiding,
    /// What names the sign.
    pub told_by: Teller,
    /// The sentence that names it; empty: a plain one.
    pub note: String,
    /// What is hidden.
    pub holds: Holds,
    /// For a slip: the name of the thing at which it lies.
    pub at: String,
}

/// One of several like things.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thing {
    /// What the host and guests call it: "the round parcel".
    pub name: String,
    /// The symbol of the theme that it wears; empty in a setup: drawn by chance.
    #[serde(default)]
    pub sign: String,
    /// The word that stands under the symbol, and by which the note names it; empty in a setup: the symbol's name.
    #[serde(default)]
    pub word: String,
}

/// Where at the thing the key lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hiding {
    /// Under it.
    Under,
    /// Behind it.
    Behind,
    /// Inside it.
    Inside,
    /// Inside something to eat: allowed, with a finding.
    InFood,
}

impl Hiding {
    /// The word in a sentence.
    const fn word(self) -> &'static str {
        match self {
            Self::Under => "under",
            Self::Behind => "behind",
            Self::Inside | Self::InFood => "inside",
        }
    }
}

/// What names the sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Teller {
    /// A printed note.
    Card,
    /// The story letter or another text of the author's.
    Letter,
}

/// What is hidden.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Holds {
    /// The key of the lock.
    Key,
    /// A slip on which the host writes the code.
    Slip,
}

impl Default for Setup {
    fn default() -> Self {
        let thing = |name: &str| Thing { name: name.into(), ..Thing::default() };
        Self {
            things: vec![
                thing("the round parcel"),
                thing("the long parcel"),
                thing("the flat parcel"),
                thing("the tall parcel"),
                thing("the striped parcel"),
            ],
            place: Hiding::Under,
            told_by: Teller::Card,
            note: String::new(),
            holds: Holds::Key,
            at: String::new(),
        }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct View {
    /// The things with their signs.
    pub things: Vec<Thing>,
    /// The sentence that names a sign.
    pub note: String,
    /// What says it.
    pub told_by: Teller,
    /// Where at the thing guests look.
    pub place: Hiding,
    /// The code slip, if one is hidden in place of a key.
    pub slip: Option<Slip>,
}

/// A code slip.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Slip {
    /// At which thing it lies, counted from zero.
    pub at: usize,
    /// What is written on it, symbol by symbol.
    pub symbols: Vec<char>,
}

impl View {
    /// The thing at which the key or slip lies, if the view leaves no doubt.
    fn spot(&self) -> Option<&Thing> {
        if let Some(slip) = &self.slip {
            return self.things.get(slip.at);
        }
        let found = read::candidates(self);
        match found.as_slice() {
            [(only, _)] => Some(*only),
            _ => None,
        }
    }

    fn hidden(&self) -> &'static str {
        if self.slip.is_some() { "code slip" } else { "key" }
    }
}

const HELP: &str = "\
## What it does
Several like things stand in the room (parcels, bells, drawers, cups), each with a tag that shows a sign. A note,
or the story letter, names one sign; under, behind or inside the thing that wears it lies the key of a padlock, or
a slip with a code. A key that opens another lock cannot be seen here: the findings of the whole kit tell of it.

## Setup
- `things`: 2 to 24 things: name as host and guests call it; sign, a symbol of the theme, empty: drawn by chance
  from the symbols; word, how the tag and the note call that sign, empty: the symbol's name
- `place`: Under, Behind, Inside, or InFood. InFood is allowed and gets a finding: hard things in food break teeth
  and choke; put the key under a sealed wrapper or beside the plate
- `told_by`: Card: a note is printed. Letter: your story letter or another text must hold the sentence of `note`
- `note`: the sentence that names the sign; empty: \"Look under the one that wears the sign of the ...\". Your own
  must hold the word of the sign, and the word of no other sign
- `holds`: Key: the answer is the name of the thing, exactly as in `things`, and the lock takes a key. Slip: the
  answer is the lock's code; the host writes it on a slip
- `at`: only with Slip: the name of the thing at which the slip lies

## Example
    (
        things: [
            (name: \"the round parcel\", sign: \"owl\"),
            (name: \"the long parcel\", sign: \"bell\"),
            (name: \"the flat parcel\", sign: \"boot\", word: \"winter boot\"),
        ],
        place: Under,
    )

## Traps
- Two things wear the sign that the note names, or the note names the signs of two.
- A thing whose own name holds the word: a \"bell jar\" when the note says bell.
- The note names no sign.
- The key inside food: a remark, and a finding.
";

impl Mechanic for MarkedHidingPlace {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "marked-hiding-place",
        name: "Marked hiding place",
        guests: "look at the thing that wears the sign which the note names",
        order: "a key needs none; a slip is read from left to right",
        prints: "a tag for each thing, and the note",
        host: "ties the tags to like things and hides the key at one of them",
        help: HELP,
        parts: &[
            Part { key: "things", name: "the tagged things", printed: true, optional: false },
            Part { key: "note", name: "the note that names the sign", printed: true, optional: true },
        ],
        minutes: (2, 6),
        least_age: 5,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        lay::lay_out(setup, job, rng)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn parts(&self, view: &View) -> Vec<&'static str> {
        match view.told_by {
            Teller::Card => vec!["things", "note"],
            Teller::Letter => vec!["things"],
        }
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let mut pieces = draw::tags(view, cx)?;
        if view.told_by == Teller::Card {
            pieces.push(draw::note(view, cx)?);
        }
        Ok(pieces)
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let tags: Vec<String> = view.things.iter().map(|thing| format!("{} on {}", thing.word, thing.name)).collect();
        #[expect(clippy::cast_precision_loss, reason = "at most HIDING_THINGS")]
        let count = view.things.len() as f64;
        let mut steps = vec![PrepStep {
            key: "tags",
            what: format!("Cut out the tags and tie them on so that all can be seen: {}.", tags.join("; ")),
            needs: vec![
                // Six tags fit on a sheet.
                Need { material: "card-paper", amount: (count / 6.0).ceil() },
                Need { material: "string", amount: (count * 0.3).ceil() },
                Need { material: "scissors", amount: 1.0 },
            ],
            hands: 4.0 + count,
            wait: 0.0,
            after: vec![],
        }];
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
        steps.push(PrepStep { key: "hide", what, needs, hands: 3.0, wait: 0.0, after: vec!["tags"] });
        if view.told_by == Teller::Letter {
            let what = format!("See that the letter or note that guests read says: “{}”", view.note);
            steps.push(PrepStep { key: "tell", what, needs: vec![], hands: 1.0, wait: 0.0, after: vec![] });
        }
        steps
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        let teller = match view.told_by {
            Teller::Card => capital(cx.name("note", "the note")),
            Teller::Letter => "The letter".into(),
        };
        match view.spot() {
            Some(thing) => format!(
                "{teller} says “{}”. {} wears the sign of the {}; the {} lies {} it.",
                view.note,
                capital(&thing.name),
                thing.word,
                view.hidden(),
                view.place.word()
            ),
            None => format!("{teller} says “{}”.", view.note),
        }
    }

    fn reset(&self, view: &View, cx: &Dressing<'_>) -> String {
        let at = view.spot().map_or("the right thing", |thing| thing.name.as_str());
        format!(
            "Put the {} back {} {at}, and look that each of {} still wears its own tag.",
            view.hidden(),
            view.place.word(),
            cx.name("things", "the tagged things")
        )
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
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
}
