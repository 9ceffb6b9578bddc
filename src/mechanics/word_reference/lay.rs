//! Finds words in the text that give the answer.

use rand::seq::IndexedRandom as _;

use super::read::{Counting, given, words};
use super::{Lead, Setup, Take, View};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::fixed::Fixed;
use crate::mechanics::words::symbols;
use crate::mechanics::{Job, Rng, number_words, signs};

/// A text that holds every number word and words that begin with nearly every letter.
const TEXT: &str = "\
When the lamp went out at supper, three
of us were under the table already. Nine
plates slid, zero broke, and my half-eaten
pie was never seen again.

Grandmother laughed until both her combs
fell out. There are five stairs from here
to the cellar, she said; I have counted
them in the dark for eight years.

So down we went, one behind the other, to
look for candles. Kittens got there first:
four of them, asleep in a quilt – and two
extra tails that nobody could explain.

Every jar, vase and zither on those shelves
was older than me. Seven had labels, six
of them wrong. Yet the candles were right
where she remembered.";

/// Fewest characters of a line: shorter ones would be a column of single words.
const LEAST_MEASURE: usize = 20;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let digits = signs::alphabet(&answer)?.contains(&'0');
    let measure = usize::from(setup.measure);
    if !(LEAST_MEASURE..=limits::FIXED_CHARS).contains(&measure) {
        return Err(Trouble::new(format!(
            "`measure` is {measure}, and a line has {LEAST_MEASURE} to {} characters",
            limits::FIXED_CHARS
        ))
        .hint("44 suits most texts"));
    }
    let own = !setup.text.trim().is_empty();
    let text = Fixed::written(if own { &setup.text } else { TEXT }, Some(measure))?;
    let take = setup.take.unwrap_or(if digits { Take::Words } else { Take::Initials });
    let wanted: Vec<String> = match take {
        Take::Words | Take::Lengths => answer.iter().map(char::to_string).collect(),
        Take::Initials => number_words::spelled(&answer).iter().map(char::to_string).collect(),
    };
    if take == Take::Lengths && (!digits || answer.contains(&'0')) {
        return Err(Trouble::new("words have 1 to 9 letters, and the answer holds something else")
            .hint("take an answer of the digits 1 to 9, or set `take` to words or initials"));
    }
    if take == Take::Words && !digits {
        return Err(Trouble::new("whole words give digits, and the answer holds letters")
            .hint("set `take` to initials, or leave it out"));
    }
    if wanted.len() > limits::LEADS {
        return Err(Trouble::new(format!(
            "the list would have {} rows, and a card takes {}",
            wanted.len(),
            limits::LEADS
        ))
        .hint("take a shorter answer, or set `take` to words or lengths"));
    }
    let said: String = answer.iter().collect();
    if text.text().to_uppercase().contains(&said) {
        return Err(Trouble::new("the answer stands openly in the text").hint("write another text, or another answer"));
    }
    let mut leads: Vec<Lead> = Vec::new();
    for symbol in &wanted {
        let places = places(&text, symbol, take);
        // No word twice, as long as there are others.
        let fresh: Vec<Lead> = places.iter().filter(|lead| !leads.contains(lead)).copied().collect();
        let Some(lead) = fresh.choose(rng).or_else(|| places.choose(rng)) else {
            return Err(missing(symbol, take));
        };
        leads.push(*lead);
    }
    Ok(View {
        text,
        leads,
        columns: setup.state_columns,
        counting: setup.state_counting,
        take: Some(take).filter(|_| setup.state_take),
    })
}

/// Every word of the text that gives this symbol.
fn places(text: &Fixed, symbol: &str, take: Take) -> Vec<Lead> {
    let mut places = Vec::new();
    let count = |at: usize| u8::try_from(at + 1).ok();
    for (paragraph, lines) in text.paragraphs.iter().enumerate() {
        for (line, own) in lines.iter().enumerate() {
            for (at, word) in words(own, Counting::Stated).iter().enumerate() {
                let lead = count(paragraph).zip(count(line)).zip(count(at));
                if let (true, Some(((paragraph, line), at))) = (given(word, take).as_deref() == Some(symbol), lead) {
                    places.push([paragraph, line, at]);
                }
            }
        }
    }
    places
}

fn missing(symbol: &str, take: Take) -> Trouble {
    let what = match take {
        Take::Words => {
            let word = symbol.chars().next().and_then(number_words::word).unwrap_or(symbol).to_lowercase();
            format!("the text has no word \"{word}\"")
        }
        Take::Initials => format!("the text has no word that begins with {symbol}"),
        Take::Lengths => format!("the text has no word of {symbol} letters"),
    };
    Trouble::new(what).hint("write one into `text`, take another answer, or leave `text` empty for one that is at hand")
}
