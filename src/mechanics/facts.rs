//! What a mechanic is, and what it is asked to arrange.

use serde::Serialize;

use crate::kit::LockKind;
use crate::theme::Colour;

/// What a mechanic is, in words and facts.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Meta {
    /// Stable id; also the file name with `_` for `-`.
    pub id: &'static str,
    /// Name as shown.
    pub name: &'static str,
    /// What guests do, in a sentence.
    pub guests: &'static str,
    /// What fixes the order of the answer.
    pub order: &'static str,
    /// What is printed.
    pub prints: &'static str,
    /// What the host prepares.
    pub host: &'static str,
    /// The help text: what can be chosen in the setup, with an example in RON, and the traps.
    pub help: &'static str,
    /// The parts that must lie somewhere in the room, printed or made.
    pub parts: &'static [Part],
    /// Typical minutes for a group, least and most (estimate; common practice, no source).
    pub minutes: (u8, u8),
    /// Youngest age that can do it (estimate; common practice, no source).
    pub least_age: u8,
    /// Materials of the tools that guests need: "uv-torch".
    pub tools: &'static [&'static str],
    /// Whether guests must tell colours apart; a twin in shape or word must then be drawn.
    pub colour: bool,
}

impl Meta {
    /// A part by its key.
    #[must_use]
    pub fn part(&self, key: &str) -> Option<&'static Part> {
        self.parts.iter().find(|part| part.key == key)
    }
}

/// A part of a puzzle: printed or made by the host.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Part {
    /// Key under which the kit says where it lies.
    pub key: &'static str,
    /// What it is, in words.
    pub name: &'static str,
    /// Whether Inklatch prints it (else the host makes it).
    pub printed: bool,
    /// Whether it depends on the setup whether the part exists.
    pub optional: bool,
}

/// What a mechanic is asked to arrange.
#[derive(Clone, Copy, Debug)]
pub struct Job<'a> {
    /// The answer as the author wrote it.
    pub answer: &'a str,
    /// The lock that it opens.
    pub lock: &'a LockKind,
    /// The theme's symbols, by name, for mechanics that draw with them.
    pub symbols: &'a [&'a str],
    /// The symbols that mark the kit's locks: one among the things of a puzzle would be taken for the mark.
    pub marks: &'a [&'a str],
    /// The theme's telling colours: name and value.
    pub colours: &'a [(&'a str, Colour)],
    /// The locks of the kit that hang in a hole of a hasp, without the one that the answer opens, by their holes.
    pub hung: &'a [Hung<'a>],
}

/// A lock in a hole of a hasp.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hung<'a> {
    /// What the host calls it.
    pub name: &'a str,
    /// The symbol that marks it; may be empty.
    pub mark: &'a str,
    /// The hole, counted from the hinge.
    pub hole: u8,
    /// Whether a box stays shut as long as it does.
    pub needed: bool,
}
