//! What went wrong, where, and how to mend it.
//!
//! Inner functions return [`Hinted`]; the caller that knows the place adds it ([`Trouble::at`]).

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};

/// A result whose error carries hints.
pub type Hinted<T> = Result<T, Trouble>;

/// An error for a person: a headline, an optional place, and what to do about it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// The thing at fault first, lower case, no full stop.
    pub message: String,
    /// Where: a file with line and column, or a place in the kit, already in words.
    pub place: Option<String>,
    /// How to mend it, one sentence each.
    pub hints: Vec<String>,
}

impl Trouble {
    /// A trouble with no place and no hints yet.
    pub fn new(message: impl Into<String>) -> Self {
        Self { message: message.into(), place: None, hints: Vec::new() }
    }

    /// Adds a way to mend it.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hints.push(hint.into());
        self
    }

    /// Says where, unless an inner function has said so already.
    #[must_use]
    pub fn at(mut self, place: impl Into<String>) -> Self {
        self.place.get_or_insert_with(|| place.into());
        self
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(place) = &self.place {
            write!(f, "{place}: ")?;
        }
        f.write_str(&self.message)?;
        for hint in &self.hints {
            write!(f, "\n  hint: {hint}")?;
        }
        Ok(())
    }
}

impl std::error::Error for Trouble {}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Severity {
    /// Stops an export unless forced.
    Blocks,
    /// Should be mended.
    Warns,
    /// Worth knowing.
    Notes,
}

impl Severity {
    /// The word shown to the author.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Blocks => "blocks",
            Self::Warns => "warns",
            Self::Notes => "notes",
        }
    }
}

/// A play level: which hints lie open from the start, which setups change.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// For the youngest guests.
    Gentle,
    /// The base that the others change.
    #[default]
    Standard,
    /// For guests who want to work.
    Stiff,
}

impl Level {
    /// All levels, easiest first.
    pub const ALL: [Self; 3] = [Self::Gentle, Self::Standard, Self::Stiff];

    /// The word shown and used in file names.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Gentle => "gentle",
            Self::Standard => "standard",
            Self::Stiff => "stiff",
        }
    }
}

/// A step of a hint ladder.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Step {
    /// Where to look.
    Nudge,
    /// What to do.
    Method,
    /// All but the last step.
    Giveaway,
}

impl Step {
    /// All steps, gentlest first.
    pub const ALL: [Self; 3] = [Self::Nudge, Self::Method, Self::Giveaway];

    /// The word shown to the author.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Nudge => "nudge",
            Self::Method => "method",
            Self::Giveaway => "giveaway",
        }
    }

    /// One, two or three: also the number of dots on the token.
    #[must_use]
    pub const fn number(self) -> usize {
        match self {
            Self::Nudge => 1,
            Self::Method => 2,
            Self::Giveaway => 3,
        }
    }
}

/// A field of a puzzle that a finding can point at.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PuzzleField {
    /// The puzzle as a whole.
    Whole,
    /// Its title.
    Title,
    /// Its mechanic.
    Mechanic,
    /// Its setup.
    Setup,
    /// Its answer.
    Answer,
    /// The lock it opens.
    Opens,
    /// Where one of its parts lies.
    Part(String),
    /// What it calls one of its parts, or prints over it.
    Name(String),
    /// A tool it needs.
    Tool(PropId),
    /// One hint, at one level.
    Hint(Level, Step),
}

/// A place in a kit, precise enough for the window to jump to the field.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Anchor {
    /// The kit as a whole: title, author, players.
    Kit,
    /// The minutes of play that the kit states.
    PlayTime,
    /// The rules of the play levels.
    Levels,
    /// The letter.
    Letter,
    /// A smaller text.
    Note(NoteId),
    /// A field of a puzzle.
    Puzzle(PuzzleId, PuzzleField),
    /// A lock.
    Lock(LockId),
    /// A box.
    Box(BoxId),
    /// A spot.
    Spot(SpotId),
    /// A prop.
    Prop(PropId),
    /// The kit's closing: where the treat is.
    Finish,
    /// A word of the theme or the kit.
    Word(String),
    /// A colour role of the palette.
    Palette(String),
    /// The theme as a whole.
    Theme,
    /// A printed piece, by its id.
    Piece(String),
}

impl fmt::Display for Anchor {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Kit => f.write_str("kit"),
            Self::PlayTime => f.write_str("play time"),
            Self::Levels => f.write_str("play levels"),
            Self::Letter => f.write_str("letter"),
            Self::Note(id) => write!(f, "note {id}"),
            Self::Puzzle(id, field) => {
                write!(f, "puzzle {id}")?;
                match field {
                    PuzzleField::Whole => Ok(()),
                    PuzzleField::Title => f.write_str(", title"),
                    PuzzleField::Mechanic => f.write_str(", mechanic"),
                    PuzzleField::Setup => f.write_str(", setup"),
                    PuzzleField::Answer => f.write_str(", answer"),
                    PuzzleField::Opens => f.write_str(", opens"),
                    PuzzleField::Part(part) => write!(f, ", part {part}"),
                    PuzzleField::Name(key) => write!(f, ", name {key}"),
                    PuzzleField::Tool(tool) => write!(f, ", tool {tool}"),
                    PuzzleField::Hint(level, step) => write!(f, ", {} {}", level.word(), step.word()),
                }
            }
            Self::Lock(id) => write!(f, "lock {id}"),
            Self::Box(id) => write!(f, "box {id}"),
            Self::Spot(id) => write!(f, "spot {id}"),
            Self::Prop(id) => write!(f, "prop {id}"),
            Self::Finish => f.write_str("finish"),
            Self::Word(word) => write!(f, "word {word}"),
            Self::Palette(role) => write!(f, "colour {role}"),
            Self::Theme => f.write_str("theme"),
            Self::Piece(id) => write!(f, "piece {id}"),
        }
    }
}
