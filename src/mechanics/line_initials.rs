//! `line-initials`: the first letters of a text's lines, read downwards, spell the answer.

mod bank;
mod read;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::fixed::{self, Fixed, Initials};
use crate::mechanics::words::symbols;
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng, number_words, signs};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct LineInitials;

const TEXT: &str = "text";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    by: By,
    bold: bool,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: String::new(), by: By::Lines, bold: false, state_rule: true }
    }
}

/// What the letters are the first of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum By {
    /// Of lines.
    Lines,
    /// Of paragraphs.
    Paragraphs,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    text: Fixed,
    /// Whose first letters count, if the sheet says so.
    rule: Option<By>,
    /// Whose first letters are set bold, if any are.
    bold: Option<By>,
}

impl Mechanic for LineInitials {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "line-initials",
        name: "Line initials",
        guests: "read the first letters of the lines of a text downwards",
        order: "from the top line to the last, as the sheet says",
        prints: "the sheet with the text, whose lines are the same on every paper",
        host: "cuts it out and lays it in its place",
        help: texts::HELP,
        parts: &[Part { key: TEXT, name: "the sheet with the text", printed: true, optional: false }],
        minutes: (2, 6),
        least_age: 8,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        let digits = signs::alphabet(&answer)?.contains(&'0');
        let text = if setup.text.trim().is_empty() {
            bank::text(&number_words::spelled(&answer), setup.by, rng)?
        } else {
            Fixed::written(&setup.text, None)?
        };
        let initials = read::initials(&text, setup.by);
        let (says, wanted) = (initials.iter().collect::<String>(), answer.iter().collect::<String>());
        let found: String = number_words::find(&initials).iter().map(|found| found.digit).collect();
        if if digits { found != wanted } else { says != wanted } {
            let numbers = if digits && !found.is_empty() { format!(" and so hide {found}") } else { String::new() };
            let trouble = Trouble::new(format!("the first letters are {says}{numbers}, which is not the answer"));
            return Err(trouble
                .hint("for an answer of digits they must spell its number words and hold no others, else its letters")
                .hint("leave `text` empty to have it written for you"));
        }
        if text.text().to_uppercase().contains(&wanted) {
            return Err(
                Trouble::new("the answer stands openly in the text").hint("write another text, or another answer")
            );
        }
        let said = Some(setup.by);
        Ok(View { text, rule: said.filter(|_| setup.state_rule), bold: said.filter(|_| setup.bold) })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        let read = || {
            let (text, by_lines) = fixed::reread(printed, TEXT, cx, texts::rule(By::Lines))?;
            if by_lines {
                return Ok(View { text, rule: Some(By::Lines), bold: None });
            }
            let (text, by_paragraphs) = fixed::reread(printed, TEXT, cx, texts::rule(By::Paragraphs))?;
            Ok(View { text, rule: by_paragraphs.then_some(By::Paragraphs), bold: None })
        };
        Some(read())
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![TEXT]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let words = fixed::Words {
            part: TEXT,
            title: cx.name("text-title", "From the night book"),
            alt: "A sheet with a text in short lines:",
            rule: view.rule.map_or("", texts::rule),
            initials: match view.bold {
                None => Initials::Plain,
                Some(By::Lines) => Initials::OfLines,
                Some(By::Paragraphs) => Initials::OfParagraphs,
            },
        };
        Ok(vec![fixed::sheet(cx, &words, &view.text)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        vec![PrepStep::printed(vec![
            Need { material: "plain-paper", amount: 1.0 },
            Need { material: "scissors", amount: 1.0 },
        ])]
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
