use serde::Serialize;

use super::{Face, Role};

/// Whom a piece is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Audience {
    /// Guests find it in the room.
    Players,
    /// The host hands it out when asked: hint tokens.
    Hints,
    /// The host only.
    Host,
}

/// What a piece is printed on. The weights are those of the shopping list (common practice, no source).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stock {
    /// Plain printer paper: letters, and sheets that are written on.
    Plain,
    /// Card paper.
    #[default]
    Card,
    /// Clear film, made for the printer.
    Film,
}

impl Stock {
    /// All, in the order in which sheets are printed.
    pub const ALL: [Self; 3] = [Self::Plain, Self::Card, Self::Film];

    /// The material of the shopping list that it is.
    #[must_use]
    pub const fn material(self) -> &'static str {
        match self {
            Self::Plain => "plain-paper",
            Self::Card => "card-paper",
            Self::Film => "printer-film",
        }
    }

    /// What to put into the printer, for the head of a sheet.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Plain => "plain paper, 80 to 100 g/m²",
            Self::Card => "card paper, 160 to 250 g/m²",
            Self::Film => "clear film for your kind of printer",
        }
    }
}

impl Piece {
    /// The title that is printed on it; none where it has none, or where large letters are all that it shows.
    #[must_use]
    pub fn title(&self) -> Option<String> {
        let mut large = self.front.runs().filter(|run| run.role == Role::Display);
        let only = large.next().filter(|_| large.next().is_none())?;
        let words: Vec<String> = only.text.text().split_whitespace().map(str::to_owned).collect();
        Some(words.join(" ")).filter(|title| !title.is_empty())
    }
}

/// Something printed and cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Piece {
    /// Stable name in the kit: the puzzle's id and the part's name, or the note's id.
    pub id: String,
    /// The part of the puzzle that it is; the key under which the kit says where it lies.
    pub part: String,
    /// Label printed outside the cut line: what it is, no answers.
    pub label: String,
    /// Whom it is for.
    pub audience: Audience,
    /// The front.
    pub front: Face,
    /// The back, if it has one.
    pub back: Option<Face>,
    /// How many are needed for one group.
    pub copies: u16,
    /// Whether its true size matters; its sheet then carries the check bar.
    pub measured: bool,
    /// What it is printed on.
    pub stock: Stock,
    /// Whether it goes onto a thing of its size, such as a lid or a mug, so that no edition may enlarge it.
    pub on_a_thing: bool,
    /// Whether it belongs to the large-print edition: what stands beside it on its sheet is then large as well, and it
    /// may be parted over several sheets.
    pub large: bool,
    /// Pieces with the same group are kept together on sheets, in order.
    pub group: String,
}
