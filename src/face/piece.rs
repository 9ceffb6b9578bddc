use serde::Serialize;

use super::Face;

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
    /// Pieces with the same group are kept together on sheets, in order.
    pub group: String,
}
