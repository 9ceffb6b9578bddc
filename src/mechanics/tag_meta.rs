//! `tag-meta`: a folded tag on each lock of a hasp; opened, and put in the order of the holes, they spell a closing word.

mod draw;
mod read;
mod reread;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::words::{shared_out, symbols};
use crate::mechanics::{Dressing, Hung, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct TagMeta;

const TAGS: &str = "tags";
const CARD: &str = "hasp-card";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    locks: Vec<Hanging>,
    numbers: bool,
    hasp_card: bool,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { locks: Vec::new(), numbers: false, hasp_card: true, state_rule: true }
    }
}

/// A lock in a hole of the hasp, as the author lists it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hanging {
    hole: u8,
    name: String,
    #[serde(default)]
    mark: String,
    /// Whether guests may leave this lock shut and still finish.
    #[serde(default)]
    spare: bool,
}

/// A tag that guests find on a lock once it is open.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tag {
    /// What the host calls the lock on which it hangs.
    lock: String,
    /// The lock's mark, drawn on the tag; may be empty.
    mark: String,
    /// The hole's number, if the tag says it.
    number: Option<u8>,
    /// Its letters or digits.
    text: String,
    /// Whether guests may leave the lock shut, and so never see the tag.
    spare: bool,
}

/// A hole of the hasp as the card shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hole {
    number: u8,
    /// The mark of the lock that hangs in it; may be empty.
    mark: String,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    tags: Vec<Tag>,
    /// The hasp card; none where there is no card.
    holes: Vec<Hole>,
    /// Whether the card says to read the tags from the first hole on.
    rule: bool,
}

impl Mechanic for TagMeta {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "tag-meta",
        name: "Tags on the locks",
        guests: "take the tag off each lock that opens, and put the tags in the order of the hasp's holes",
        order: "the numbers of the holes on the hasp card",
        prints: "a folded tag for each lock of the hasp, and the hasp card",
        host: "folds and closes the tags, punches them, and hangs them on the shackles",
        help: texts::HELP,
        parts: &[
            Part { key: TAGS, name: "the tags on the locks", printed: true, optional: false },
            Part { key: CARD, name: "the hasp card", printed: true, optional: true },
        ],
        minutes: (2, 5),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, _: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let mut locks =
            if setup.locks.is_empty() { job.hung.iter().map(Hanging::of).collect() } else { setup.locks.clone() };
        locks.sort_by_key(|lock| lock.hole);
        if locks.len() < 2 {
            return Err(Trouble::new("fewer than two locks hang on a hasp, and each of them needs a tag")
                .hint("give the kit's locks their `hole`, or list them under `locks`"));
        }
        if locks.len() > limits::HASP {
            return Err(Trouble::new(format!("{} locks are listed, and a hasp takes {}", locks.len(), limits::HASP))
                .hint("list those of one hasp under `locks`"));
        }
        let twice = |pair: &[Hanging]| matches!(pair, [a, b] if a.hole == b.hole);
        if locks.iter().any(|lock| lock.hole == 0) || locks.windows(2).any(twice) {
            return Err(Trouble::new("every lock needs a hole of its own, counted from 1 at the hinge")
                .hint("mend `hole` of the locks"));
        }
        if let Some(lock) =
            locks.iter().find(|lock| !lock.mark.is_empty() && !job.symbols.contains(&lock.mark.as_str()))
        {
            let trouble = Trouble::new(format!("the theme has no symbol `{}`", lock.mark));
            return Err(trouble.hint(format!("its symbols are {}", job.symbols.join(", "))));
        }
        if answer.len() < locks.len() || answer.len() > locks.len() * limits::TAG_SYMBOLS {
            return Err(Trouble::new(format!(
                "the answer has {} letters or digits, for {} tags",
                answer.len(),
                locks.len()
            ))
            .hint(format!(
                "a tag bears 1 to {}: take a longer or shorter word, or list other `locks`",
                limits::TAG_SYMBOLS
            )));
        }
        let texts = shared_out(&answer, locks.len());
        let tag = |(lock, text): (&Hanging, Vec<char>)| Tag {
            lock: lock.name.clone(),
            mark: lock.mark.clone(),
            number: Some(lock.hole).filter(|_| setup.numbers),
            text: text.into_iter().collect(),
            spare: lock.spare,
        };
        let tags = locks.iter().zip(texts).map(tag).collect();
        let hole = |lock: &Hanging| Hole { number: lock.hole, mark: lock.mark.clone() };
        let holes = if setup.hasp_card { locks.iter().map(hole).collect() } else { Vec::new() };
        Ok(View { tags, holes, rule: setup.state_rule })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, view: &View) -> Vec<&'static str> {
        if view.holes.is_empty() { vec![TAGS] } else { vec![TAGS, CARD] }
    }

    fn on_locks(&self) -> &'static [&'static str] {
        &[TAGS]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let mut pieces = draw::tags(view, cx)?;
        if !view.holes.is_empty() {
            pieces.push(draw::hasp_card(view, cx)?);
        }
        Ok(pieces)
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let tags = texts::tags(cx);
        // What is closed is blank but for its tab. That tells guests nothing: it is of the lock on which the tag hangs.
        let tab = if view.tags.iter().all(|tag| !tag.mark.is_empty()) {
            "the mark of the lock"
        } else {
            "the mark or the name of the lock"
        };
        let need = |material, amount| Need { material, amount };
        vec![
            PrepStep {
                key: "cut",
                what: format!(
                    "One at a time, fold {tags} at the line with the print outside, and punch through both halves at once where the hole is drawn, beside the fold. Then fold it the other way, with the print inside: a tab stands out below and shows {tab} on which the tag is to hang. Close the two sides with tape."
                ),
                needs: vec![need("card-paper", 2.0), need("scissors", 1.0), need("tape", 1.0), need("hole-punch", 1.0)],
                hands: 1.5 * f64::from(u8::try_from(view.tags.len()).unwrap_or(u8::MAX)),
                wait: 0.0,
                after: Vec::new(),
            },
            PrepStep {
                key: "hang",
                what: format!(
                    "Hang the tags before the locks are shut, the shackle through the hole, or a loop of string where it is too \
                     thick: {}.",
                    texts::hung(view)
                ),
                needs: Vec::new(),
                hands: 2.0,
                wait: 0.0,
                after: vec!["cut"],
            },
        ]
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}

impl Hanging {
    fn of(hung: &Hung<'_>) -> Self {
        Self { hole: hung.hole, name: hung.name.to_owned(), mark: hung.mark.to_owned(), spare: !hung.needed }
    }
}
