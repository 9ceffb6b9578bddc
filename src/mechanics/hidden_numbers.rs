//! `hidden-numbers`: a short text in which number words run across the gaps between words.

mod bank;
mod read;
mod texts;

use serde::{Deserialize, Serialize};

use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::{Printed, lines};
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Dressing, Job, Mechanic, Meta, Part, Rng, front};
use crate::readings::{Budget, Readings};
use crate::script::{Paragraph, Rich, Span};

/// The mechanic.
#[derive(Debug)]
pub struct HiddenNumbers;

const STORY: &str = "story";

/// Most letters of a text: more would be smaller than 9 points on a card.
const MOST_CHARS: usize = 600;

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    text: String,
    state_rule: bool,
}

impl Default for Setup {
    fn default() -> Self {
        Self { text: String::new(), state_rule: true }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    text: String,
    rule: bool,
}

impl Mechanic for HiddenNumbers {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "hidden-numbers",
        name: "Hidden numbers",
        guests: "find number words that run across the gaps between the words of a text",
        order: "reading order",
        prints: "the card with the text",
        host: "cuts it out and lays it in its place",
        help: texts::HELP,
        parts: &[Part { key: STORY, name: "the card with the text", printed: true, optional: false }],
        minutes: (3, 8),
        least_age: 9,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        let text = setup.text.split_whitespace().collect::<Vec<_>>().join(" ");
        if text.is_empty() {
            return Ok(View { text: bank::text(&answer, rng)?, rule: setup.state_rule });
        }
        if text.chars().count() > MOST_CHARS {
            return Err(Trouble::new(format!("the text has more than {MOST_CHARS} letters"))
                .hint("shorten it: it must be read on one card"));
        }
        let found: Vec<read::Found> = read::find(&text).into_iter().filter(|found| found.across).collect();
        if found.iter().map(|found| found.digit).ne(answer.iter().copied()) {
            let places: Vec<String> =
                found.iter().map(|found| format!("{} in \"{}\"", found.digit, found.place)).collect();
            let hides = if places.is_empty() { "nothing".to_owned() } else { places.join(", ") };
            return Err(Trouble::new(format!("the text hides {hides}, which is not the answer"))
                .hint("a number word must end in another word than it begins: \"froze roads\" hides zero")
                .hint("leave `text` empty to have it written for you"));
        }
        Ok(View { text, rule: setup.state_rule })
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        let read = || {
            let card = front(printed, STORY)?;
            let lines = lines(&card.texts_in(cx.slot_on(card, "portrait", "body")?));
            let words: Vec<&str> = lines.iter().map(|line| line.text.as_str()).collect();
            let words = words.join(" ");
            // The rule is the last paragraph; it is no part of the text.
            let story = words.strip_suffix(texts::RULE);
            Ok(View { text: story.unwrap_or(&words).trim().to_owned(), rule: story.is_some() })
        };
        Some(read())
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![STORY]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        let paragraph =
            |text: &str, emph| Paragraph { spans: vec![Span { text: text.to_owned(), emph, ..Span::default() }] };
        // The text stands exactly as written: markup in it would move letters.
        let mut body = Rich { paragraphs: vec![paragraph(&view.text, false)] };
        if view.rule {
            body.paragraphs.push(paragraph(texts::RULE, true));
        }
        let face = cx.card("portrait", cx.name("story-title", "Read closely"), &body, "A card with a short text")?;
        Ok(vec![cx.piece(STORY, "", face)])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        vec![PrepStep::printed(vec![
            Need { material: "card-paper", amount: 1.0 },
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
