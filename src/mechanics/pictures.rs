//! The theme's symbols as pictures of a puzzle: named by the author, or taken by chance.

use rand::seq::SliceRandom as _;

use crate::diag::{Hinted, Trouble};
use crate::face::proof::{Looks, Printed, PrintedText};
use crate::mechanics::{Job, Rng};
use crate::units::Rect;

/// One symbol for each wish, all different: the one that is named, or another by chance where the wish is empty.
///
/// # Errors
/// When the theme lacks a symbol, one is named twice, or there are too few.
pub fn choose(wanted: &[&str], job: &Job<'_>, rng: &mut Rng) -> Hinted<Vec<String>> {
    for (index, name) in wanted.iter().enumerate().filter(|(_, name)| !name.is_empty()) {
        if !job.symbols.contains(name) {
            return Err(missing(name, job));
        }
        if wanted.iter().take(index).any(|other| other == name) {
            return Err(Trouble::new(format!("the symbol `{name}` is named twice"))
                .hint("each picture must be another one: name another, or leave it empty"));
        }
    }
    let mut spare: Vec<&str> = job.symbols.iter().copied().filter(|name| !wanted.contains(name)).collect();
    spare.shuffle(rng);
    // A lock's mark among the pictures would be taken for the mark: those come last.
    spare.sort_by_key(|name| job.marks.contains(name));
    let mut spare = spare.into_iter();
    wanted
        .iter()
        .map(|name| {
            let taken = if name.is_empty() { spare.next() } else { Some(*name) };
            taken.map(str::to_owned).ok_or_else(|| {
                Trouble::new(format!("the theme has too few symbols: {} different ones are needed", wanted.len()))
                    .hint("ask for fewer, or add symbols to theme.ron")
            })
        })
        .collect()
}

/// Refuses a name that no symbol of the theme has.
///
/// # Errors
/// Then; the hint names the nearest.
pub fn known(names: &[String], job: &Job<'_>) -> Hinted<()> {
    match names.iter().find(|name| !job.symbols.contains(&name.as_str())) {
        None => Ok(()),
        Some(name) => Err(missing(name, job)),
    }
}

fn missing(name: &str, job: &Job<'_>) -> Trouble {
    let mut trouble = Trouble::new(format!("the theme has no symbol `{name}`"));
    if let Some(near) = crate::kit::file::nearest(name, job.symbols) {
        trouble = trouble.hint(format!("did you mean `{near}`?"));
    }
    trouble.hint("leave it empty to take one of the theme's own")
}

/// The theme's symbols that a printed piece shows in a rectangle, each with its place.
#[must_use]
pub fn standing(sheet: &Printed, rect: Rect, looks: &Looks) -> Vec<(String, Rect)> {
    let named = |art: usize| looks.named(&sheet.shapes_of(art)).first().map(|name| (*name).to_owned());
    sheet.arts_in(rect).into_iter().filter_map(|(art, place)| Some((named(art)?, place))).collect()
}

/// The one character of a printed text.
///
/// # Errors
/// When there are more, or none.
pub fn single(text: &PrintedText) -> Hinted<char> {
    let mut symbols = text.text.trim().chars();
    match (symbols.next(), symbols.next()) {
        (Some(symbol), None) => Ok(symbol),
        _ => Err(Trouble::new(format!("\"{}\" stands where one letter or digit belongs", text.text))),
    }
}

/// A symbol's name as a word in a sentence: "row boat" for `row-boat`.
#[must_use]
pub fn word(name: &str) -> String {
    name.replace('-', " ")
}
