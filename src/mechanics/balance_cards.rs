//! `balance-cards`: pictures of scales tell which of two things is heavier; from heavy to light, their tags are the
//! answer.

mod draw;
mod read;
mod reread;
mod texts;
mod work;

use std::collections::BTreeSet;

use rand::RngExt as _;
use rand::seq::{IndexedRandom as _, SliceRandom as _};
use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::paper;
use crate::mechanics::slips::Slip;
use crate::mechanics::words::symbols;
use crate::mechanics::work::{Effort, Work, arranged};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct BalanceCards;

const SHEET: &str = "scales";

/// The order rule as the sheet prints it.
const ORDER: &str = "Put the things in order from heavy to light. Read their tags in that order.";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// The things, as symbols of the theme; empty: drawn by chance.
    pub things: Vec<String>,
    /// Weighings beyond those that are needed.
    pub spare: u8,
    /// How much work it shall be.
    pub work: Effort,
}

impl Default for Setup {
    fn default() -> Self {
        Self { things: Vec::new(), spare: 1, work: Effort::Fair }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The things with their tags, as the sheet lists them.
    pub things: Vec<Thing>,
    /// The weighings: the place of the heavier thing, of the lighter, and whether the heavier lies on the left.
    pub weighings: Vec<Weighing>,
}

/// A thing with its tag.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thing {
    /// The theme's symbol.
    pub symbol: String,
    /// What stands on its tag.
    pub tag: char,
}

/// A picture of scales.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Weighing {
    /// The thing whose pan is down.
    pub heavier: usize,
    /// The other.
    pub lighter: usize,
    /// Whether the heavier lies on the left.
    pub left: bool,
    /// A third thing that lies on both pans.
    #[serde(default)]
    pub both: Option<usize>,
}

impl Mechanic for BalanceCards {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "balance-cards",
        name: "Balance cards",
        guests: "order things from heavy to light by pictures of scales, and read the tags in that order",
        order: "from the heaviest to the lightest",
        prints: "the sheet with the scales and the tags",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of scales", printed: true, optional: false }],
        minutes: (2, 6),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let count = answer.len();
        if !(2..=limits::SCALES_THINGS).contains(&count) {
            return Err(Trouble::new(format!("{count} things cannot be put in order on one sheet"))
                .hint(format!("give the puzzle a lock of 2 to {} wheels", limits::SCALES_THINGS)));
        }
        arranged(setup.work, rng, &mut |rng| weighed(setup, &answer, job, rng), &work::work)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        work::work(view)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        read::slips(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        paper::reset(&[texts::name(cx)])
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}

/// Things with the answer on their tags, from heavy to light, and the weighings that tell it.
fn weighed(setup: &Setup, answer: &[char], job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let count = answer.len();
    let ranked = ranked(setup, job, count, rng)?;
    // Places on the sheet by chance: place[rank] is where the thing of that rank is listed.
    let mut place: Vec<usize> = (0..count).collect();
    place.shuffle(rng);
    let mut things: Vec<(usize, Thing)> = place
        .iter()
        .zip(ranked)
        .zip(answer)
        .map(|((place, symbol), tag)| (*place, Thing { symbol, tag: *tag }))
        .collect();
    things.sort_by_key(|(place, _)| *place);

    // Neighbours in rank must be weighed against each other; every other weighing follows from those.
    let mut pairs: Vec<(usize, usize)> = (1..count).map(|rank| (rank - 1, rank)).collect();
    let mut others: Vec<(usize, usize)> =
        (0..count).flat_map(|heavy| (heavy + 2..count).map(move |light| (heavy, light))).collect();
    if setup.work != Effort::Light {
        others.shuffle(rng);
        pairs.extend(others.into_iter().take(usize::from(setup.spare)));
        pairs.shuffle(rng);
    }
    let mut weighings = Vec::new();
    for (heavier, lighter) in pairs {
        let left = rng.random();
        let third: Vec<usize> = (0..count).filter(|rank| *rank != heavier && *rank != lighter).collect();
        let both = match setup.work {
            Effort::Deep => third.choose(rng).map(|rank| place[*rank]),
            Effort::Light | Effort::Fair => None,
        };
        weighings.push(Weighing { heavier: place[heavier], lighter: place[lighter], left, both });
    }
    Ok(View { things: things.into_iter().map(|(_, thing)| thing).collect(), weighings })
}

/// Symbols for the things, from heavy to light.
fn ranked(setup: &Setup, job: &Job<'_>, count: usize, rng: &mut Rng) -> Hinted<Vec<String>> {
    let mut chosen: Vec<String> = if setup.things.is_empty() {
        drawn(job, count)
    } else {
        setup.things.iter().map(|name| name.trim().to_owned()).collect()
    };
    if let Some(unknown) = chosen.iter().find(|name| !job.symbols.contains(&name.as_str())) {
        let mut trouble = Trouble::new(format!("the theme has no symbol `{unknown}`"));
        if let Some(near) = crate::kit::file::nearest(unknown, job.symbols) {
            trouble = trouble.hint(format!("did you mean `{near}`?"));
        }
        return Err(trouble.hint("take symbols of the theme as `things`, or leave `things` empty"));
    }
    let different: BTreeSet<&String> = chosen.iter().collect();
    if different.len() != chosen.len() || chosen.len() < count {
        return Err(Trouble::new(format!("the answer takes {count} different things"))
            .hint("list as many symbols of the theme as `things`, each once, or leave `things` empty"));
    }
    chosen.shuffle(rng);
    chosen.truncate(count);
    Ok(chosen)
}

/// Symbols to choose from where the author lists none: all that mark no lock, or all where those are too few.
fn drawn(job: &Job<'_>, count: usize) -> Vec<String> {
    let names = |marks: bool| {
        let kept = job.symbols.iter().filter(|name| marks || !job.marks.contains(name));
        kept.map(|name| (*name).to_owned()).collect::<Vec<String>>()
    };
    let free = names(false);
    if free.len() < count { names(true) } else { free }
}
