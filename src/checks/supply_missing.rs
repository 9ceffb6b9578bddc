use std::collections::BTreeSet;

use super::things::{self, puzzles};
use super::{Draft, Facts, Sink};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::material::{MATERIALS, material};

check!(
    /// ## What it does
    /// Flags a step of the preparation that names a thing which is on no list: neither among what the step takes, nor
    /// on the kit's shopping list.
    ///
    /// ## Why it matters at the table
    /// The host stands there without it on the afternoon of the party.
    ///
    /// ## How to mend
    /// Add a prop made of that material, so that it comes onto the shopping list.
    SupplyMissing, "supply-missing", Warns, "a preparation step names what no list has",
    "the host stands there without it on the afternoon of the party", run
);

/// Words by which a step names a thing of the built-in list, and the thing's id. Words that also mean something
/// else ("book", "card") are left out.
const NAMED: &[(&str, &str)] = &[
    ("scissors", "scissors"),
    ("glue", "glue"),
    ("tape", "tape"),
    ("pencil", "pencil"),
    ("envelope", "envelope"),
    ("envelopes", "envelope"),
    ("fastener", "paper-fastener"),
    ("torch", "uv-torch"),
    ("magnet", "magnets"),
    ("magnets", "magnets"),
    ("washers", "steel-washers"),
    ("tile", "tile"),
];

/// Things of which one will do where a word names another.
const ALSO: &[(&str, &str)] = &[("magnets", "magnet-wand"), ("magnets", "steel-washers")];

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let listed: BTreeSet<&str> = things::materials(facts).into_iter().map(|(material, _)| material.id).collect();
    let has = |id: &str| listed.contains(id) || ALSO.iter().any(|(of, other)| *of == id && listed.contains(other));
    for (puzzle, laid) in puzzles(facts) {
        let at = || Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole);
        for step in &laid.prep {
            for need in step.needs.iter().filter(|need| material(need.material).is_none()) {
                let message = format!("a step of \"{}\" takes `{}`, which is on no list", puzzle.title, need.material);
                sink.add(Draft::new(at(), message).help("add a prop for it, so that it comes onto the shopping list"));
            }
            let text = step.what.to_lowercase();
            let words: BTreeSet<&str> = text.split(|c: char| !c.is_alphanumeric()).collect();
            for (word, id) in NAMED.iter().filter(|(word, id)| words.contains(word) && !has(id)) {
                let name = MATERIALS.iter().find(|material| material.id == *id).map_or(*word, |material| material.name);
                let message = format!("a step of \"{}\" names \"{word}\", and no list has {name}", puzzle.title);
                sink.add(Draft::new(at(), message).help(format!("add a prop made of `{id}`: {}", step.what)));
            }
        }
    }
}
