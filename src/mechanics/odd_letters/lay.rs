//! Chooses the letters that are set differently.

use rand::RngExt as _;

use super::{Setup, Stretch, Style, View};
use crate::diag::{Hinted, Trouble};
use crate::mechanics::words::symbols;
use crate::mechanics::{Job, Rng, number_words, signs};
use crate::script::parse;

/// Most letters of a text: more would be smaller than 9 points on a card.
const MOST_CHARS: usize = 600;

/// A text with plenty of every letter that usual letter wheels have.
pub(super) const TEXT: &str = "The last barge of the week came up the river at dusk, heavy with pale blankets, \
    ladders, kettles and three baskets of wheat. Nobody knew who had sent it. The smith held up a lamp, the baker \
    tasted the salt on its planks, and the old ferryman wrote down what each of us saw. Then a small bell rang twelve \
    times, the lamps went out, and in the dark we all heard steps that nobody else would own to next day.";

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let digits = signs::alphabet(&answer)?.contains(&'0');
    if setup.style == Style::Plain {
        return Err(Trouble::new("`style` is plain, and odd letters must be set differently").hint("take bold or both"));
    }
    let written = setup.text.split_whitespace().collect::<Vec<_>>().join(" ");
    let rich = parse(&written);
    if rich.paragraphs.iter().flat_map(|paragraph| &paragraph.spans).any(|span| span.strong || span.emph) {
        return Err(Trouble::new("the text has emphasis of its own, which would be read as odd letters")
            .hint("take the * and ** out of `text`"));
    }
    let text = rich.text();
    let count = text.chars().count();
    if count > MOST_CHARS {
        return Err(
            Trouble::new(format!("the text has {count} letters, and a card takes {MOST_CHARS}")).hint("shorten `text`")
        );
    }
    let whole: String = answer.iter().collect();
    if text.to_uppercase().contains(&whole) {
        return Err(Trouble::new("the answer stands openly in the text").hint("write another text, or another answer"));
    }
    let wanted: Vec<char> = if digits { number_words::spelled(&answer) } else { answer };
    let letters: Vec<char> = text.chars().collect();
    let places = places(&letters, &wanted, rng)?;
    let mut stretches: Vec<Stretch> = Vec::new();
    for (at, letter) in letters.into_iter().enumerate() {
        if places.contains(&at) {
            // Each odd letter is a stretch of its own: side by side they are still single letters.
            stretches.push(Stretch { text: letter.to_string(), style: setup.style });
            continue;
        }
        match stretches.last_mut() {
            Some(last) if last.style == Style::Plain => last.text.push(letter),
            _ => stretches.push(Stretch { text: letter.to_string(), style: Style::Plain }),
        }
    }
    Ok(View { stretches, rule: setup.state_rule })
}

/// Places of the wanted letters, in order: by chance among those that leave room for the rest.
fn places(letters: &[char], wanted: &[char], rng: &mut Rng) -> Hinted<Vec<usize>> {
    let same = |letter: &char, wanted: char| letter.eq_ignore_ascii_case(&wanted);
    let mut latest = Vec::new();
    let mut end = letters.len();
    for (index, letter) in wanted.iter().enumerate().rev() {
        let Some(at) = letters.get(..end).and_then(|head| head.iter().rposition(|other| same(other, *letter))) else {
            return Err(Trouble::new(format!(
                "the text runs out of letters: counted from its end, letter {} of {} is missing ({letter})",
                index + 1,
                wanted.len()
            ))
            .hint("write a longer text, or one with more of that letter; digits need their number words in it"));
        };
        latest.push(at);
        end = at;
    }
    latest.reverse();
    let mut places = Vec::new();
    let mut from = 0;
    for (letter, last) in wanted.iter().zip(latest) {
        let fit: Vec<usize> =
            (from..=last).filter(|at| letters.get(*at).is_some_and(|other| same(other, *letter))).collect();
        // The first of the fitting ones, or one soon after: late ones would crowd what follows.
        let near = fit.len().min(3);
        let at = fit.get(rng.random_range(0..near.max(1))).copied().unwrap_or(last);
        places.push(at);
        from = at + 1;
    }
    Ok(places)
}
