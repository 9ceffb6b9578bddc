//! What the texts and answers of several mechanics share.

use crate::diag::{Hinted, Trouble};
use crate::kit::LockKind;
use crate::mechanics::Rng;
use crate::script::capital;
use crate::theme::Colour;
use rand::RngExt as _;

/// "a", "a and b", "a, b and c".
#[must_use]
pub fn listed(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// A name without the article at its head, as it stands below a piece.
#[must_use]
pub fn bare(name: &str) -> &str {
    ["the ", "a ", "an "].iter().find_map(|article| name.strip_prefix(article)).unwrap_or(name)
}

/// What stands below a piece: what its part is called, and of several pieces of a part which it is, or what to do with it.
#[must_use]
pub fn caption(name: &str, of: &str) -> String {
    let stop = if of.is_empty() { "" } else { ": " };
    capital(&format!("{}{stop}{of}", bare(name)))
}

/// The answer's symbols, as the lock shows them.
///
/// # Errors
/// When the lock cannot be set to the answer, or it has wheels for something other than symbols.
pub fn symbols(answer: &str, lock: &LockKind) -> Hinted<Vec<char>> {
    let answer = answer.trim();
    let answer = match lock {
        LockKind::Digits(_) => answer.to_owned(),
        LockKind::Letters(_) | LockKind::Spoken => answer.to_uppercase(),
        LockKind::Directions(_) | LockKind::Key => {
            return Err(Trouble::new(format!("this puzzle gives symbols, and the lock wants {}", lock.describe()))
                .hint("give the puzzle a lock with digit or letter wheels"));
        }
    };
    if lock.spells(&answer) && answer.chars().all(char::is_alphanumeric) {
        return Ok(answer.chars().collect());
    }
    let mut trouble = Trouble::new(format!("the answer \"{answer}\" cannot be set on a lock with {}", lock.describe()));
    trouble = match lock.wheels() {
        Some(wheels) => trouble.hint(format!("write {wheels} symbols, each of them on its wheel")),
        None => trouble.hint("write letters and digits only, without spaces or signs"),
    };
    Err(trouble)
}

/// The answer of a lock that is pushed: `U`, `D`, `L` and `R`.
///
/// # Errors
/// When the lock cannot be opened by these pushes.
pub fn pushes(answer: &str, lock: &LockKind) -> Hinted<Vec<char>> {
    let answer = answer.trim().to_uppercase();
    if lock.spells(&answer) {
        return Ok(answer.chars().collect());
    }
    let wheels = lock.wheels().unwrap_or_default();
    Err(Trouble::new(format!("the answer \"{answer}\" cannot be pushed on a lock with {}", lock.describe()))
        .hint(format!("write {wheels} letters of U, D, L and R")))
}

/// Refuses an answer that is not made of digits.
///
/// # Errors
/// When a symbol is no digit.
pub fn digits_only(symbols: &[char]) -> Hinted<()> {
    if symbols.iter().all(char::is_ascii_digit) {
        return Ok(());
    }
    Err(Trouble::new("this puzzle gives digits, and the answer holds something else")
        .hint("write an answer of digits, and give the puzzle a lock with digit wheels"))
}

/// A symbol that the lock could show, by chance.
pub fn any_symbol(lock: &LockKind, rng: &mut Rng) -> char {
    let alphabet: Vec<char> = match lock {
        LockKind::Letters(wheels) => {
            wheels.iter().flat_map(|wheel| wheel.to_uppercase().chars().collect::<Vec<_>>()).collect()
        }
        LockKind::Spoken => ('A'..='Z').collect(),
        LockKind::Digits(_) | LockKind::Directions(_) | LockKind::Key => ('0'..='9').collect(),
    };
    let last = alphabet.len().saturating_sub(1);
    alphabet.get(rng.random_range(0..=last)).copied().unwrap_or('0')
}

/// Splits symbols into so many runs, as even as can be, the longer ones first.
#[must_use]
pub fn shared_out(symbols: &[char], runs: usize) -> Vec<Vec<char>> {
    let (each, more) = (symbols.len() / runs.max(1), symbols.len() % runs.max(1));
    let mut rest = symbols;
    let mut out = Vec::new();
    for run in 0..runs {
        let (head, tail) = rest.split_at((each + usize::from(run < more)).min(rest.len()));
        out.push(head.to_vec());
        rest = tail;
    }
    out
}

/// Colours by their plain names, for themes that do not name them.
const PLAIN_COLOURS: &[(&str, Colour)] = &[
    ("white", Colour::WHITE),
    ("black", Colour { r: 0x1A, g: 0x1A, b: 0x1A }),
    ("grey", Colour { r: 0x80, g: 0x80, b: 0x80 }),
    ("red", Colour { r: 0xB8, g: 0x30, b: 0x30 }),
    ("orange", Colour { r: 0xE0, g: 0x80, b: 0x20 }),
    ("yellow", Colour { r: 0xF2, g: 0xD0, b: 0x30 }),
    ("gold", Colour { r: 0xD9, g: 0xA5, b: 0x20 }),
    ("green", Colour { r: 0x3A, g: 0x80, b: 0x48 }),
    ("blue", Colour { r: 0x23, g: 0x40, b: 0x8E }),
    ("purple", Colour { r: 0x6A, g: 0x3A, b: 0x8A }),
    ("brown", Colour { r: 0x70, g: 0x48, b: 0x28 }),
    ("pink", Colour { r: 0xE8, g: 0xA0, b: 0xB4 }),
];

/// The colour that the theme, or else plain English, gives this name.
///
/// # Errors
/// When neither knows it.
pub fn colour_named(name: &str, theme: &[(&str, Colour)]) -> Hinted<Colour> {
    let known = || theme.iter().chain(PLAIN_COLOURS);
    if let Some((_, colour)) = known().find(|(other, _)| other.eq_ignore_ascii_case(name.trim())) {
        return Ok(*colour);
    }
    let names: Vec<&str> = known().map(|(name, _)| *name).collect();
    let mut trouble = Trouble::new(format!("there is no colour `{name}`"));
    if let Some(near) = crate::kit::file::nearest(name, &names) {
        trouble = trouble.hint(format!("did you mean `{near}`?"));
    }
    Err(trouble.hint("name it under `colours` in theme.ron"))
}
