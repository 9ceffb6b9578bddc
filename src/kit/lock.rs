use serde::{Deserialize, Serialize};

use crate::ids::LockId;

/// A lock: what guests must bring to it, and how they tell it from its neighbours. One puzzle opens it, or a key: as many
/// puzzles as the kit has, so many locks it needs; a box may have several, and a word said to the host is a lock as well.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lock {
    /// Stable name.
    pub id: LockId,
    /// What the host calls it, for example "the brass padlock".
    pub name: String,
    /// How it is opened.
    pub kind: LockKind,
    /// The symbol that marks this lock, every piece that feeds it and its hint tokens; a symbol of the theme that no other
    /// lock has. `inklatch themes NAME` lists them.
    #[serde(default)]
    pub mark: String,
    /// The hole of the hasp in which it hangs, counted from the hinge; 0 when it hangs alone.
    #[serde(default)]
    pub hole: u8,
    /// How to set the code, in a sentence, if the maker's sheet may be lost.
    #[serde(default)]
    pub how_to_set: String,
    /// Whether a tag with its mark is printed, to be tied to its shackle; `tag: false` where you mark it otherwise. A word
    /// that is said has none: its mark is on the box.
    #[serde(default = "yes", skip_serializing_if = "is_so")]
    pub tag: bool,
}

const fn yes() -> bool {
    true
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde hands over a reference")]
const fn is_so(value: &bool) -> bool {
    *value
}

impl Lock {
    /// Whether a tag is printed for it.
    #[must_use]
    pub fn tagged(&self) -> bool {
        self.tag && !self.mark.is_empty() && self.kind != LockKind::Spoken
    }
}

/// How a lock is opened.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum LockKind {
    /// Wheels with the digits 0 to 9: `Digits(3)`.
    Digits(u8),
    /// Wheels with letters, one string of letters for each wheel: `Letters(["ABDHLMPSTW", "AEIOULRHNW"])`.
    Letters(Vec<String>),
    /// A row of pushes to the four sides, written U, D, L, R: `Directions(4)`.
    Directions(u8),
    /// A key; the answer names the hiding place.
    Key,
    /// A word said to the host.
    Spoken,
}

impl LockKind {
    /// How many symbols an answer has, where the lock fixes it.
    #[must_use]
    pub fn wheels(&self) -> Option<usize> {
        match self {
            Self::Digits(n) | Self::Directions(n) => Some(usize::from(*n)),
            Self::Letters(wheels) => Some(wheels.len()),
            Self::Key | Self::Spoken => None,
        }
    }

    /// Whether wheel `index` can show `symbol`.
    #[must_use]
    pub fn shows(&self, index: usize, symbol: char) -> bool {
        match self {
            Self::Digits(_) => symbol.is_ascii_digit(),
            Self::Directions(_) => matches!(symbol, 'U' | 'D' | 'L' | 'R'),
            Self::Letters(wheels) => {
                wheels.get(index).is_some_and(|wheel| wheel.chars().any(|c| c.eq_ignore_ascii_case(&symbol)))
            }
            Self::Key | Self::Spoken => true,
        }
    }

    /// Whether the lock can be set to `answer`: right length, each symbol on its wheel.
    #[must_use]
    pub fn spells(&self, answer: &str) -> bool {
        let count = answer.chars().count();
        count > 0
            && self.wheels().is_none_or(|wheels| wheels == count)
            && answer.chars().enumerate().all(|(index, symbol)| self.shows(index, symbol))
    }

    /// How many codes the lock has; none for keys and words.
    #[must_use]
    pub fn codes(&self) -> Option<u64> {
        match self {
            Self::Digits(n) => 10_u64.checked_pow(u32::from(*n)),
            Self::Directions(n) => 4_u64.checked_pow(u32::from(*n)),
            Self::Letters(wheels) => {
                wheels.iter().try_fold(1_u64, |all, wheel| all.checked_mul(wheel.chars().count() as u64))
            }
            Self::Key | Self::Spoken => None,
        }
    }

    /// A few words for tables: "3 digit wheels".
    #[must_use]
    pub fn describe(&self) -> String {
        match self {
            Self::Digits(n) => format!("{n} digit wheels"),
            Self::Letters(wheels) => format!("{} letter wheels", wheels.len()),
            Self::Directions(n) => format!("{n} pushes"),
            Self::Key => "a key".into(),
            Self::Spoken => "a word said to the host".into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_must_be_spellable() {
        assert!(LockKind::Digits(3).spells("042"));
        assert!(!LockKind::Digits(3).spells("42"));
        assert!(!LockKind::Digits(3).spells("04x"));
        let letters = LockKind::Letters(vec!["BT".into(), "EO".into(), "LN".into()]);
        assert!(letters.spells("bel") && letters.spells("TON") && !letters.spells("NOT"));
        assert_eq!(letters.codes(), Some(8));
    }
}
