//! `picture-key`: a legend gives each picture of the theme a digit or letter; a row of pictures spells the answer.

pub(in crate::mechanics) mod alike;
mod texts;

use std::sync::Arc;

use rand::seq::SliceRandom as _;
use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::signs::{self, Entry, KeyWords, RowWords, Way};
use crate::mechanics::words::symbols;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::readings::{Budget, Readings};
use crate::units::Size;

/// The mechanic.
#[derive(Debug)]
pub struct PictureKey;

const ROW: &str = "row";
const LEGEND: &str = "legend";

/// Lines of a legend that is drawn by chance: one for each digit.
const LINES: usize = 10;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    pictures: Vec<String>,
    start_mark: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: String::new(), pictures: Vec::new(), start_mark: true }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    text: String,
    /// Names of the theme's symbols, left to right.
    row: Vec<String>,
    start_mark: bool,
    legend: Vec<Entry>,
}

impl Mechanic for PictureKey {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "picture-key",
        name: "Picture key",
        guests: "read a row of pictures with a legend that gives each picture a digit or letter",
        order: "from the start mark, left to right",
        prints: "the row of pictures and the legend",
        host: "cuts both out and lays them apart",
        help: texts::HELP,
        parts: &[
            Part { key: ROW, name: "the row of pictures", printed: true, optional: false },
            Part { key: LEGEND, name: "the legend", printed: true, optional: false },
        ],
        minutes: (2, 4),
        least_age: 4,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let alphabet = signs::alphabet(&answer)?;
        let pictures = pictures(setup, job, rng)?;
        let mut needed = answer.clone();
        needed.sort_unstable();
        needed.dedup();
        if needed.len() > pictures.len() {
            return Err(Trouble::new(format!(
                "the answer has {} different symbols, and there are {} pictures",
                needed.len(),
                pictures.len()
            ))
            .hint("name more of the theme's symbols in `pictures`, or take an answer with fewer different symbols"));
        }
        let mut spare: Vec<char> = alphabet.into_iter().filter(|symbol| !needed.contains(symbol)).collect();
        spare.shuffle(rng);
        let mut listed: Vec<char> = needed.into_iter().chain(spare).take(pictures.len()).collect();
        // In rising order the legend is quickly searched and says nothing about which of its lines are used.
        listed.sort_unstable();
        let legend: Vec<Entry> =
            listed.into_iter().zip(pictures).map(|(symbol, sign)| Entry { symbol, sign }).collect();
        let sign = |symbol: &char| legend.iter().find(|entry| entry.symbol == *symbol).map(|entry| entry.sign.clone());
        let row = answer.iter().filter_map(sign).collect();
        Ok(View { text: setup.text.trim().to_owned(), row, start_mark: setup.start_mark, legend })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        let mut ways = vec![Way { label: "left to right", signs: view.row.clone() }];
        if !view.start_mark {
            ways.push(Way { label: "right to left", signs: view.row.iter().rev().cloned().collect() });
        }
        signs::read(&ways, &view.legend, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        let read = || {
            let looks = cx.looks()?;
            let row = signs::reread_row(printed, ROW, cx, &looks)?;
            let legend = signs::reread_key(printed, LEGEND, cx, &looks)?;
            Ok(View { text: row.text, row: row.signs, start_mark: row.start, legend })
        };
        Some(read())
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![ROW, LEGEND]
    }

    fn apart(&self, _: &View) -> Vec<(&'static str, &'static str)> {
        vec![(ROW, LEGEND)]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let names: Vec<&str> = view.legend.iter().map(|entry| entry.sign.as_str()).collect();
        alike::refuse(&names, cx)?;
        let draw = |name: &str, _: Size| -> Hinted<Arc<str>> { cx.symbol(name) };
        let row = RowWords {
            part: ROW,
            title: cx.name("row-title", "Only pictures"),
            text: &view.text,
            rule: if view.start_mark { texts::RULE } else { "" },
            start: view.start_mark,
            alt: "A row of pictures",
        };
        let legend = KeyWords {
            part: LEGEND,
            title: cx.name("legend-title", "What pictures mean"),
            rule: "Each picture stands for what is beside it.",
            square: true,
            alt: "A table that gives each picture a letter or digit",
        };
        Ok(vec![signs::row_card(cx, &row, &view.row, &draw)?, signs::key_card(cx, &legend, &view.legend, &draw)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        signs::cut_out()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        texts::reset(cx)
    }

    fn draft_hints(&self, _: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(cx)
    }
}

/// The legend's pictures: those that the author names, or some of the theme's by chance.
fn pictures(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<Vec<String>> {
    if setup.pictures.is_empty() {
        let mut all: Vec<String> = job.symbols.iter().map(|name| (*name).to_owned()).collect();
        all.shuffle(rng);
        // A lock's mark among the pictures would be taken for the mark: those come last.
        all.sort_by_key(|name| job.marks.contains(&name.as_str()));
        all.truncate(LINES);
        return Ok(all);
    }
    for (index, name) in setup.pictures.iter().enumerate() {
        if !job.symbols.contains(&name.as_str()) {
            let mut trouble = Trouble::new(format!("the theme has no symbol `{name}`"));
            if let Some(near) = crate::kit::file::nearest(name, job.symbols) {
                trouble = trouble.hint(format!("did you mean `{near}`?"));
            }
            return Err(trouble.hint("leave `pictures` empty to take the theme's own"));
        }
        if setup.pictures.iter().take(index).any(|other| other == name) {
            return Err(Trouble::new(format!("the picture `{name}` is named twice"))
                .hint("each picture stands for one digit or letter: name another"));
        }
    }
    Ok(setup.pictures.clone())
}
