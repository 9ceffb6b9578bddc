//! Puts the digits of an answer under letters of a sign.

use std::collections::BTreeMap;

use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::{Cell, EqualLetters, Pointer, Says, Setup, Style, View, draw, read};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::{Job, Rng};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let digits = symbols(job.answer, job.lock)?;
    digits_only(&digits)?;
    let mut lines = sign(setup)?;
    let places = places(&lines);
    let named = named(setup, &digits, &places, rng)?;

    let mut marks: BTreeMap<usize, char> = BTreeMap::new();
    let mut used: BTreeMap<char, usize> = BTreeMap::new();
    for (letter, digit) in named.iter().zip(&digits) {
        let nth = used.entry(*letter).or_insert(0);
        if let Some(place) = places.get(letter).and_then(|all| all.get(*nth)) {
            marks.insert(*place, *digit);
        }
        *nth += 1;
    }
    // A named letter that stood without a digit elsewhere would make guests doubt that they have found the right one.
    let mut spare: Vec<usize> = Vec::new();
    for (letter, all) in &places {
        for place in all {
            if used.contains_key(letter) {
                marks.entry(*place).or_insert_with(|| any_digit(rng));
            } else {
                spare.push(*place);
            }
        }
    }
    let decoys = usize::from(setup.decoys);
    if decoys > spare.len() {
        return Err(Trouble::new(format!("the sign has room for {} decoys, not {decoys}", spare.len()))
            .hint(format!("set decoys to {} or fewer, or write a longer sign", spare.len())));
    }
    spare.sort_unstable();
    spare.shuffle(rng);
    for place in spare.into_iter().take(decoys) {
        marks.insert(place, any_digit(rng));
    }
    for (index, cell) in lines.iter_mut().flatten().enumerate() {
        cell.mark = marks.get(&index).copied();
    }

    let several = named.iter().any(|letter| places.get(letter).is_some_and(|all| all.len() > 1));
    let says = match &setup.pointer {
        Style::Plain => Says::Letters(named),
        Style::Initials(line) => Says::Line(line.trim().to_owned()),
    };
    let pointer = Pointer { says, rule: setup.state_rule, equal_rule: setup.state_rule && several };
    Ok(View { heading: setup.heading.trim().to_owned(), lines, pointer })
}

fn any_digit(rng: &mut Rng) -> char {
    char::from(b'0' + rng.random_range(0..10_u8))
}

/// The sign's lines, without marks.
fn sign(setup: &Setup) -> Hinted<Vec<Vec<Cell>>> {
    let text = setup.sign.trim().to_uppercase();
    if text.chars().chain(setup.heading.chars()).any(|c| c.is_ascii_digit()) {
        return Err(Trouble::new("a digit in the sign's own words would be read as part of the code")
            .hint("write the number as a word, or leave it out"));
    }
    if let Some(odd) = text.chars().find(|c| !(c.is_alphabetic() || " &'-.,".contains(*c))) {
        return Err(Trouble::new(format!("`{odd}` cannot stand on the sign"))
            .hint("use letters, spaces and the signs & ' - . ,"));
    }
    if !text.chars().any(char::is_alphabetic) {
        return Err(Trouble::new("the sign has no letters").hint("write its words into `sign`"));
    }
    if text.chars().count() > limits::SIGN_CHARS {
        return Err(Trouble::new(format!("the sign has more than {} letters", limits::SIGN_CHARS))
            .hint("shorten it: its letters would become too small to carry digits"));
    }
    let words: Vec<&str> = text.split_whitespace().collect();
    let lines = draw::wrap(&words);
    Ok(lines.iter().map(|line| line.chars().map(|letter| Cell { letter, mark: None }).collect()).collect())
}

/// Where each letter stands, counted over all cells in reading order.
fn places(lines: &[Vec<Cell>]) -> BTreeMap<char, Vec<usize>> {
    let mut places: BTreeMap<char, Vec<usize>> = BTreeMap::new();
    for (index, cell) in lines.iter().flatten().enumerate() {
        if cell.letter.is_alphabetic() {
            places.entry(cell.letter).or_default().push(index);
        }
    }
    places
}

/// The letters that the pointer names, one for each digit.
fn named(setup: &Setup, digits: &[char], places: &BTreeMap<char, Vec<usize>>, rng: &mut Rng) -> Hinted<Vec<char>> {
    let written: Vec<char> = match &setup.pointer {
        Style::Initials(line) => {
            let words = read::initials(line);
            if words.len() != digits.len() {
                return Err(Trouble::new(format!(
                    "the pointer's line has {} words, and the answer {} digits",
                    words.len(),
                    digits.len()
                ))
                .hint("write one word for each digit"));
            }
            words
        }
        Style::Plain => {
            let letters = setup.letters.chars().filter(|c| c.is_alphabetic());
            let letters: Vec<char> = letters.flat_map(char::to_uppercase).collect();
            if letters.is_empty() {
                return drawn(setup, digits.len(), places, rng);
            }
            if letters.len() != digits.len() {
                return Err(Trouble::new(format!(
                    "{} letters are named, and the answer has {} digits",
                    letters.len(),
                    digits.len()
                ))
                .hint("name one letter for each digit, or leave `letters` empty"));
            }
            letters
        }
    };
    for letter in &written {
        let stands = places.get(letter).map_or(0, Vec::len);
        let wanted = written.iter().filter(|other| *other == letter).count();
        if stands < wanted {
            return Err(Trouble::new(format!("the sign has {stands} of the letter {letter}, and {wanted} are named"))
                .hint(format!("its letters are {}", spelled(places.keys()))));
        }
        if setup.equal_letters == EqualLetters::Avoid && stands > 1 {
            return Err(Trouble::new(format!("the letter {letter} stands on the sign {stands} times"))
                .hint(format!("these stand there once: {}", spelled(once(places).iter())))
                .hint("or set equal_letters to ReadingOrder; the card then states which comes first"));
        }
    }
    Ok(written)
}

/// Letters drawn by chance, all different.
fn drawn(setup: &Setup, count: usize, places: &BTreeMap<char, Vec<usize>>, rng: &mut Rng) -> Hinted<Vec<char>> {
    let mut letters = match setup.equal_letters {
        EqualLetters::Avoid => once(places),
        EqualLetters::ReadingOrder => places.keys().copied().collect(),
    };
    if letters.len() < count {
        return Err(Trouble::new(format!(
            "the answer has {count} digits, and only {} letters of the sign will do: {}",
            letters.len(),
            spelled(letters.iter())
        ))
        .hint("write a sign with more letters that stand there once, or set equal_letters to ReadingOrder"));
    }
    letters.shuffle(rng);
    letters.truncate(count);
    Ok(letters)
}

/// The letters that stand on the sign once.
fn once(places: &BTreeMap<char, Vec<usize>>) -> Vec<char> {
    places.iter().filter(|(_, all)| all.len() == 1).map(|(letter, _)| *letter).collect()
}

fn spelled<'a>(letters: impl Iterator<Item = &'a char>) -> String {
    letters.map(char::to_string).collect::<Vec<_>>().join(" ")
}
