//! `odd-letters`: some letters of a text are set differently; in reading order they spell the answer.

mod lay;
mod read;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::Hinted;
use crate::face::Piece;
use crate::face::proof::{Printed, PrintedText};
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng, front};
use crate::readings::{Budget, Readings};
use crate::script::{Paragraph, Rich, Span};

/// The mechanic.
#[derive(Debug)]
pub struct OddLetters;

const STORY: &str = "story";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    style: Style,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: lay::TEXT.into(), style: Style::Bold, state_rule: true }
    }
}

/// How a letter is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Style {
    /// As most of the text.
    Plain,
    /// Heavier.
    Bold,
    /// Sloping.
    Italic,
    /// Heavier and sloping.
    Both,
}

/// Letters that are set alike.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stretch {
    text: String,
    style: Style,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    stretches: Vec<Stretch>,
    rule: bool,
}

impl View {
    /// The letters that are not set as most are, in reading order.
    fn odd(&self) -> impl Iterator<Item = (char, Style)> + '_ {
        self.stretches.iter().filter(|stretch| stretch.style != Style::Plain).flat_map(|stretch| {
            let letters = stretch.text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase);
            letters.map(|letter| (letter, stretch.style))
        })
    }
}

impl Mechanic for OddLetters {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "odd-letters",
        name: "Odd letters",
        guests: "find the letters of a text that are set differently and read them in order",
        order: "reading order",
        prints: "the card with the text",
        host: "cuts it out and lays it in its place",
        help: texts::HELP,
        parts: &[Part { key: STORY, name: "the card with the text", printed: true, optional: false }],
        minutes: (2, 6),
        least_age: 7,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        lay::lay_out(setup, job, rng)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        let read = || {
            let card = front(printed, STORY)?;
            let mut found = card.texts_in(cx.slot_on(card, "portrait", "body")?);
            // A tenth of a millimetre is one baseline.
            let place = |text: &PrintedText| ((text.y.get() * 10.0).round(), text.x.get());
            found.sort_by(|a, b| {
                let (a, b) = (place(a), place(b));
                a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1))
            });
            let style = |text: &PrintedText| match (text.bold, text.italic) {
                (false, false) => Style::Plain,
                (true, false) => Style::Bold,
                (false, true) => Style::Italic,
                (true, true) => Style::Both,
            };
            let stretch = |text: &&PrintedText| Stretch { text: text.text.clone(), style: style(text) };
            Ok(View { stretches: found.iter().map(stretch).collect(), rule: card.says(texts::RULE) })
        };
        Some(read())
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![STORY]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let spans = view.stretches.iter().map(|stretch| Span {
            text: stretch.text.clone(),
            strong: matches!(stretch.style, Style::Bold | Style::Both),
            emph: matches!(stretch.style, Style::Italic | Style::Both),
            end_of_line: false,
        });
        let mut body = Rich { paragraphs: vec![Paragraph { spans: spans.collect() }] };
        if view.rule {
            let rule = Span { text: texts::RULE.to_owned(), ..Span::default() };
            body.paragraphs.push(Paragraph { spans: vec![rule] });
        }
        let face =
            cx.card("portrait", cx.name("story-title", "A careless printer"), &body, "A card with a short text")?;
        Ok(vec![cx.piece(STORY, "", face)])
    }

    fn prep(&self, _: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        vec![PrepStep {
            key: "cut",
            what: format!("Look that the odd letters of {} show in the print.", texts::story(cx)),
            needs: vec![Need { material: "card-paper", amount: 1.0 }, Need { material: "scissors", amount: 1.0 }],
            hands: 1.0,
            wait: 0.0,
            after: Vec::new(),
        }]
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
