use serde::{Deserialize, Serialize};

use crate::units::Pt;

/// The least size of large print: 16 points (UKAAF, "Creating clear print and large print documents", G003).
pub const LARGE_PRINT: Pt = Pt::new(16.0);

/// How a kit comes out of the printer. Every edition holds the same puzzles and is proven on its own.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Edition {
    /// As the theme draws it.
    #[default]
    Colour,
    /// Line work on white: no grounds, nothing filled but what carries meaning.
    LowInk,
    /// No text under 16 points (UKAAF G003: large print is 16 points at least).
    LargePrint,
}

impl Edition {
    /// All editions, the usual one first.
    pub const ALL: [Self; 3] = [Self::Colour, Self::LowInk, Self::LargePrint];

    /// The word shown, in file names and on the command line.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Colour => "colour",
            Self::LowInk => "low-ink",
            Self::LargePrint => "large-print",
        }
    }

    /// What it is, in a sentence.
    #[must_use]
    pub const fn about(self) -> &'static str {
        match self {
            Self::Colour => "As the theme draws it.",
            Self::LowInk => "Line work on white paper: less ink, and good on a grey printer.",
            Self::LargePrint => "No text under 16 points; pieces are larger, or come with a copy to read from.",
        }
    }

    /// The word put before a file's level, with its hyphen; nothing for the usual edition.
    #[must_use]
    pub const fn in_names(self) -> &'static str {
        match self {
            Self::Colour => "",
            Self::LowInk => "low-ink-",
            Self::LargePrint => "large-print-",
        }
    }
}
