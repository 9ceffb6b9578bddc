//! Whether a word in a text means the picture of that name: names of symbols are ordinary words.
//!
//! The rule would rather ask once too often than make a sentence false: "what stands in a ring" says nothing of a ring
//! among the pictures, and four wheels of a padlock are no wheel of a cart.

use std::collections::{BTreeMap, BTreeSet};

use super::map::{COLOUR_FIELDS, SYMBOL_FIELDS};
use super::phrase::{Form, Hit};
use crate::diag::{Anchor, PuzzleField};
use crate::ids::PuzzleId;
use crate::kit::ron_text::literals;
use crate::kit::{Kit, LevelChange, OldWord};
use crate::mechanics;
use crate::script::{several_already, stems, words_of};

/// Words that lead a thing in.
const LEADS: &[&str] = &[
    "a", "an", "the", "this", "that", "these", "those", "each", "every", "any", "no", "all", "both", "some", "one",
    "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "many", "another", "first", "second",
    "third", "fourth", "fifth", "next", "last",
];
/// Words that may follow a thing without making one word with it ("the bell tower").
const FOLLOWS: &[&str] = &[
    "a", "about", "above", "after", "again", "alone", "already", "also", "an", "and", "any", "are", "as", "at",
    "before", "behind", "below", "beside", "between", "beyond", "but", "by", "can", "comes", "do", "does", "down",
    "each", "every", "first", "for", "from", "goes", "had", "has", "have", "he", "if", "in", "into", "is", "it", "its",
    "last", "left", "lie", "lies", "like", "may", "must", "near", "next", "nor", "not", "of", "off", "on", "only",
    "or", "out", "over", "past", "right", "said", "says", "she", "show", "shows", "stand", "stands", "tell", "tells",
    "than", "that", "the", "then", "there", "they", "to", "too", "under", "until", "up", "was", "wears", "were",
    "when", "where", "which", "while", "who", "will", "with", "you", "your",
];
/// Words that agree with one thing or with several: where the new name is of another number, they would not.
const AGREES: &[&str] = &[
    "are", "comes", "do", "does", "goes", "has", "have", "is", "it", "lie", "lies", "says", "she", "he", "show",
    "shows", "stand", "stands", "tell", "tells", "they", "was", "wears", "were",
];
/// What a padlock has or wants, whatever picture it wears.
const OF_LOCKS: &[&str] =
    &["key", "wheel", "digit", "letter", "number", "dial", "button", "lever", "bar", "ring", "hook"];
/// What papers and lights are said to be: "white paper" is no telling colour.
const PALE: &[&str] = &["paper", "card", "sheet", "light", "cloth", "page", "ink", "pencil", "line", "lines"];

/// What a puzzle prints.
#[derive(Debug, Default)]
struct Prints {
    symbols: BTreeSet<String>,
    colours: BTreeSet<String>,
    mark: String,
    mechanic: String,
}

/// What is needed to tell the senses of a word in one kit.
#[derive(Debug)]
pub(super) struct Sense {
    puzzles: BTreeMap<PuzzleId, Prints>,
    marks: BTreeSet<String>,
    /// Stems that name a spot, a box or a prop.
    things: BTreeSet<String>,
    /// Stems that a mechanic's own rules say, by mechanic.
    rules: BTreeMap<String, BTreeSet<String>>,
}

impl Sense {
    pub(super) fn of(kit: &Kit) -> Self {
        let mut puzzles = BTreeMap::new();
        let mut rules = BTreeMap::new();
        for puzzle in &kit.puzzles {
            let mut prints = Prints { mechanic: puzzle.mechanic.clone(), ..Prints::default() };
            let changes = [&puzzle.gentle, &puzzle.stiff].into_iter().flatten();
            let setups = changes.filter_map(|LevelChange { setup, .. }| setup.as_ref());
            for literal in std::iter::once(&puzzle.setup).chain(setups).flat_map(|setup| literals(setup.ron())) {
                if SYMBOL_FIELDS.contains(&literal.field.as_str()) {
                    prints.symbols.insert(literal.text);
                } else if COLOUR_FIELDS.contains(&literal.field.as_str()) {
                    prints.colours.insert(literal.text);
                }
            }
            if let Some(lock) = kit.locks.iter().find(|lock| lock.id == puzzle.opens) {
                prints.mark.clone_from(&lock.mark);
            }
            rules.entry(puzzle.mechanic.clone()).or_insert_with(|| said_by(&puzzle.mechanic));
            puzzles.insert(puzzle.id.clone(), prints);
        }
        let names = kit.spots.iter().map(|item| &item.name).chain(kit.boxes.iter().map(|item| &item.name));
        // A prop may be called after the mark of a lock: "the key of the padlock with the drum".
        let names = names.chain(kit.props.iter().map(|item| &item.name)).map(|name| name.split(" with ").next());
        let things = names.flatten().flat_map(stems).collect();
        let marks = kit.locks.iter().map(|lock| lock.mark.clone()).filter(|mark| !mark.is_empty()).collect();
        Self { puzzles, marks, things, rules }
    }

    fn puzzle(&self, at: &Anchor) -> Option<&Prints> {
        match at {
            Anchor::Puzzle(
                id,
                PuzzleField::Title
                | PuzzleField::Name(_)
                | PuzzleField::Setup
                | PuzzleField::Hint(..)
                | PuzzleField::Answer,
            ) => self.puzzles.get(id),
            _ => None,
        }
    }

    /// Whether the puzzle of this place prints the picture or the colour that took the old word's place, so that the
    /// word may mean it.
    pub(super) fn printed(&self, at: &Anchor, word: &OldWord) -> bool {
        !word.now.is_empty()
            && self.puzzle(at).is_some_and(|prints| {
                prints.symbols.contains(&word.now) || prints.colours.contains(&word.now) || prints.mark == word.now
            })
    }

    /// Whether the word names what the puzzle of this place prints now: then it is not left over from anything.
    pub(super) fn names_what_is_printed(&self, at: &Anchor, word: &OldWord) -> bool {
        let says = |name: &String| stems(name) == stems(&word.one);
        self.puzzle(at).is_some_and(|prints| {
            prints.symbols.iter().chain(&prints.colours).any(says) || (!prints.mark.is_empty() && says(&prints.mark))
        })
    }

    /// Whether a hit means the picture or the colour beyond doubt, so that its new name can stand there by rule.
    pub(super) fn means(&self, at: &Anchor, text: &str, hit: &Hit, word: &OldWord) -> bool {
        if word.now.is_empty() || hit.form == Form::Other {
            return false;
        }
        let around = Around::of(text, hit);
        if self.on_a_lock(at, &around, hit, word) {
            return around.agrees(hit, word);
        }
        let Some(prints) = self.puzzle(at) else { return false };
        if prints.colours.contains(&word.now) {
            return hit.form == Form::One && !around.next.as_deref().is_some_and(|next| PALE.contains(&next));
        }
        let own = stems(&word.one);
        let elsewhere = |known: &BTreeSet<String>| own.iter().any(|stem| known.contains(stem));
        prints.symbols.contains(&word.now)
            && !elsewhere(&self.things)
            && !self.rules.get(&prints.mechanic).is_some_and(elsewhere)
            && around.a_thing()
            && around.agrees(hit, word)
    }

    /// "the padlock with the starfish", of a lock that wears it; in a puzzle of that lock, whatever wears it.
    fn on_a_lock(&self, at: &Anchor, around: &Around, hit: &Hit, word: &OldWord) -> bool {
        let own = stems(&word.one);
        let of_locks = OF_LOCKS.iter().any(|thing| own == stems(thing));
        if hit.form != Form::One || of_locks || !self.marks.contains(&word.now) || !around.a_thing() {
            return false;
        }
        let back = |at: usize| around.before.get(at).map_or("", String::as_str);
        let worn = matches!(back(0), "the" | "a" | "an") && matches!(back(1), "with" | "wears" | "wearing" | "bears");
        let lock = matches!(back(2), "padlock" | "lock");
        worn && (lock || self.puzzle(at).is_some_and(|prints| prints.mark == word.now))
    }
}

/// The stems in what a mechanic's help says of its rules, without the example, which names symbols at pleasure.
fn said_by(mechanic: &str) -> BTreeSet<String> {
    let Ok(known) = mechanics::find(mechanic) else { return BTreeSet::new() };
    let meta = known.meta();
    let mut example = false;
    let mut said: BTreeSet<String> = [meta.guests, meta.order, meta.prints].into_iter().flat_map(stems).collect();
    for line in meta.help.lines() {
        if let Some(head) = line.strip_prefix("## ") {
            example = head.starts_with("Example");
        }
        if !example {
            said.extend(stems(line));
        }
    }
    said
}

/// The words around a hit, as far as they stand in one clause with it.
struct Around {
    /// Before it, the nearest first, in lower case.
    before: Vec<String>,
    /// The word after it; none at the end of a clause.
    next: Option<String>,
    /// Whether it owns what follows: "the owl's cup".
    owns: bool,
    /// Whether it is a part of a word with a hyphen, or stands beside a slot.
    joined: bool,
}

impl Around {
    fn of(text: &str, hit: &Hit) -> Self {
        let quotes = ['*', '_', '"', '“', '”', '‘', '('];
        let head = text.get(..hit.span.start).unwrap_or_default().trim_end_matches(quotes);
        let tail = text.get(hit.span.end..).unwrap_or_default();
        let owns = tail.starts_with("'s") || tail.starts_with("’s");
        let tail = tail.trim_start_matches("'s").trim_start_matches("’s").trim_start_matches(['*', '_', '"', '”', ')']);
        let clause = head.rfind(['.', ',', ';', ':', '!', '?', '\n', '}', '—', '–']).map_or(0, |at| at + 1);
        let clause = (clause..=head.len()).find(|at| head.is_char_boundary(*at)).unwrap_or(head.len());
        let said = head.get(clause..).unwrap_or_default();
        let words = words_of(said);
        let before = words.iter().rev().filter_map(|word| said.get(word.span.clone())).map(str::to_lowercase).collect();
        let next = tail.strip_prefix(' ').and_then(|rest| {
            let first = words_of(rest).into_iter().next().filter(|word| word.span.start == 0)?;
            rest.get(first.span).map(str::to_lowercase)
        });
        let joined = head.ends_with('-') || head.trim_end().ends_with("}}") || tail.starts_with('-');
        let joined = joined || tail.trim_start().starts_with("{{");
        Self { before, next, owns, joined }
    }

    /// Whether the hit is a thing by itself, rather than a verb or a part of another word.
    fn a_thing(&self) -> bool {
        let led = self.before.first().is_some_and(|word| LEADS.contains(&word.as_str()));
        let alone = self.owns || self.next.as_deref().is_none_or(|next| FOLLOWS.contains(&next));
        led && alone && !self.joined
    }

    /// Whether the words around bear the new name, which may be of another number: "the oars", "the ladder".
    fn agrees(&self, hit: &Hit, word: &OldWord) -> bool {
        if hit.form != Form::One || several_already(&word.one) == several_already(&word.now) {
            return true;
        }
        let the = self.before.first().is_some_and(|word| word == "the");
        the && !self.next.as_deref().is_some_and(|next| AGREES.contains(&next))
    }
}
