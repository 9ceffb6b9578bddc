//! Fills the square so that the message leads to the answer.

use rand::seq::SliceRandom as _;

use super::{Fill, Headings, Message, SIDE, Setup, View};
use crate::diag::{Hinted, Trouble};
use crate::mechanics::spelled::letters;
use crate::mechanics::words::symbols;
use crate::mechanics::{Job, Rng, signs};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let digits = signs::alphabet(&answer)?.contains(&'0');
    let mut order = cells(setup)?;
    if setup.fill == Fill::Shuffled {
        order.shuffle(rng);
    }
    let view = |rows, columns, order: Vec<String>, message| View {
        rows,
        columns,
        cells: order.chunks(SIDE).map(<[String]>::to_vec).collect(),
        message,
        text: setup.text.trim().to_owned(),
        rule: setup.state_rule,
    };
    if digits {
        return with_word(setup, &answer, order, view, rng);
    }
    let rows = headings(setup, &[], rng)?;
    let columns = headings(setup, &[], rng)?;
    let mut pairs = Vec::new();
    for (index, letter) in answer.iter().enumerate() {
        let Some(at) = order.iter().position(|cell| cell.contains(*letter)) else {
            return Err(Trouble::new(format!("the square leaves out the letter {letter}, and the answer needs it"))
                .hint("leave out another letter with `leave_out`, or let two letters share a cell with `share`"));
        };
        let twin = order.get(at).and_then(|cell| cell.chars().find(|other| other != letter));
        if let Some(twin) = twin.filter(|twin| job.lock.shows(index, *twin)) {
            return Err(Trouble::new(format!("{letter} and {twin} share a cell, and the lock can show either"))
                .hint("leave `share` empty, and leave out a letter that the answer does not need"));
        }
        pairs.extend(rows.get(at / SIDE).zip(columns.get(at % SIDE)).map(|(row, column)| format!("{row}{column}")));
    }
    Ok(view(rows, columns, order, Message::Pairs(pairs)))
}

/// The letters of the 25 cells in the order of the alphabet.
fn cells(setup: &Setup) -> Hinted<Vec<String>> {
    let share = letters(&setup.share);
    match share.as_slice() {
        [] => {
            let out = setup.leave_out.to_ascii_uppercase();
            if !out.is_ascii_uppercase() {
                return Err(Trouble::new(format!(
                    "`leave_out` is `{}`, and it must be a letter A to Z",
                    setup.leave_out
                ))
                .hint("25 cells have room for 25 letters: name the one to leave out"));
            }
            Ok(('A'..='Z').filter(|letter| *letter != out).map(String::from).collect())
        }
        [one, two] if one != two => {
            let (first, second) = (one.min(two), one.max(two));
            let cell = |letter: char| if letter == *first { format!("{first}{second}") } else { letter.to_string() };
            Ok(('A'..='Z').filter(|letter| letter != second).map(cell).collect())
        }
        _ => Err(Trouble::new(format!("`share` is \"{}\", and it must name two different letters", setup.share))
            .hint("write share: \"IJ\", or leave it empty")),
    }
}

/// Five digits among which are those needed, in rising order.
fn headings(setup: &Setup, needed: &[char], rng: &mut Rng) -> Hinted<Vec<char>> {
    if setup.headings == Headings::Ordered {
        if let Some(digit) = needed.iter().find(|digit| !('1'..='5').contains(*digit)) {
            return Err(Trouble::new(format!("the answer needs the digit {digit}, and rows and columns are 1 to 5"))
                .hint("set headings to any, or take an answer of the digits 1 to 5"));
        }
        return Ok(('1'..='5').collect());
    }
    let mut chosen = needed.to_vec();
    chosen.sort_unstable();
    chosen.dedup();
    if chosen.len() > SIDE {
        return Err(Trouble::new("the answer needs more than five different digits for rows or for columns")
            .hint("take an answer that repeats a digit: its first, third, fifth digit are rows, the others columns"));
    }
    let mut rest: Vec<char> = ('0'..='9').filter(|digit| !chosen.contains(digit)).collect();
    rest.shuffle(rng);
    chosen.extend(rest.into_iter().take(SIDE - chosen.len()));
    chosen.sort_unstable();
    Ok(chosen)
}

fn with_word(
    setup: &Setup,
    answer: &[char],
    mut order: Vec<String>,
    view: impl FnOnce(Vec<char>, Vec<char>, Vec<String>, Message) -> View,
    rng: &mut Rng,
) -> Hinted<View> {
    if answer.len() % 2 == 1 {
        return Err(Trouble::new(format!("each letter gives two digits, and the answer has {}", answer.len()))
            .hint("take a lock with an even number of digit wheels, or one with letter wheels"));
    }
    let firsts: Vec<char> = answer.iter().step_by(2).copied().collect();
    let seconds: Vec<char> = answer.iter().skip(1).step_by(2).copied().collect();
    let rows = headings(setup, &firsts, rng)?;
    let columns = headings(setup, &seconds, rng)?;
    let place = |row: &char, column: &char| {
        let row = rows.iter().position(|digit| digit == row)?;
        Some(row * SIDE + columns.iter().position(|digit| digit == column)?)
    };
    let places: Vec<usize> = firsts.iter().zip(&seconds).filter_map(|(row, column)| place(row, column)).collect();
    let word = letters(&setup.word);
    if word.is_empty() {
        let word = places.iter().filter_map(|at| order.get(*at)?.chars().next()).collect();
        return Ok(view(rows, columns, order, Message::Word(word)));
    }
    if word.len() != places.len() {
        return Err(Trouble::new(format!(
            "the word \"{}\" has {} letters, and the answer has {} pairs of digits",
            setup.word,
            word.len(),
            places.len()
        ))
        .hint("each letter gives two digits: take a word half as long as the answer, or leave `word` empty"));
    }
    if setup.fill == Fill::Shuffled {
        for (letter, at) in word.iter().zip(&places) {
            if let Some(from) = order.iter().position(|cell| cell.contains(*letter)) {
                order.swap(from, *at);
            }
        }
    }
    // A letter that was moved away again, or never stood there, shows here.
    for (letter, at) in word.iter().zip(&places) {
        if !order.get(*at).is_some_and(|cell| cell.contains(*letter)) {
            return Err(Trouble::new(format!(
                "the letter {letter} of \"{}\" cannot stand where the answer wants it",
                setup.word
            ))
            .hint("equal letters need equal pairs of digits, different letters different pairs, and none may be left out")
            .hint("in the order of the alphabet every word has its own answer; set fill to shuffled, or leave `word` empty"));
        }
    }
    Ok(view(rows, columns, order, Message::Word(setup.word.trim().to_uppercase())))
}
