use serde::{Deserialize, Serialize};

use super::{HowMany, Printed};
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId};

/// Where a thing lies.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Place {
    /// Openly at a spot: `Spot("mantelpiece")`.
    Spot(SpotId),
    /// Inside a box, out of reach until it opens: `Box("travel-case")`.
    Box(BoxId),
}

/// A place in the room.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spot {
    /// Stable name.
    pub id: SpotId,
    /// As printed for the host: "the mantelpiece".
    pub name: String,
    /// What the host should know: "or any shelf at eye height".
    #[serde(default)]
    pub about: String,
    /// Whether it is a person, such as a helper: nobody is searched, and what stands there is with them.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub person: bool,
}

/// Anything shut by one or more locks.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BoxDef {
    /// Stable name.
    pub id: BoxId,
    /// As printed: "the oak chest".
    pub name: String,
    /// Where the box itself stands.
    pub place: Place,
    /// All of these must be open before the box opens. A box with none is never shut.
    #[serde(default)]
    pub locks: Vec<LockId>,
    /// Whether the locks hang on a hasp, which holds up to six padlocks.
    #[serde(default)]
    pub hasp: bool,
    /// Printed label for the box: width and height in millimetres, if one is wanted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub label: Option<(f64, f64)>,
    /// The prop of the form `Envelope` that this box is, if the kit prints it: `"starter-envelope"`. It lies where the box
    /// stands, goes by the box's name, and wears the marks of the box's locks, so that no label is needed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub printed: Option<PropId>,
    /// What will do as this box: "a shoe box with a buckled strap".
    #[serde(default)]
    pub about: String,
}

/// What a prop is for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum PropRole {
    /// Some puzzle needs it: a torch, a magnet, a cloth.
    Tool,
    /// The key of this lock; whoever has it can open the lock: `Key("old-padlock")`.
    Key(LockId),
    /// Decoration that is no clue.
    Decoration,
    /// Decoration that may be taken for a clue, and is listed so that checks can watch it.
    Decoy,
    /// What the party ends with.
    Treat,
}

/// A thing on a spot or in a box that no puzzle prints: bought, found at home, or printed as the kit says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Prop {
    /// Stable name.
    pub id: PropId,
    /// As printed for the host.
    pub name: String,
    /// What it is for.
    pub role: PropRole,
    /// Where it lies.
    pub place: Place,
    /// The material of the built-in list it is made of, for shopping and cautions: "uv-torch". `inklatch explain materials`
    /// is the list; a thing that is not on it has none.
    #[serde(default)]
    pub material: String,
    /// How much of it one group needs.
    #[serde(default, skip_serializing_if = "HowMany::is_usual")]
    pub amount: HowMany,
    /// Whether one party uses it up, such as a ribbon that is cut or paper that is written on: the next group has it anew,
    /// bought again, or printed again where the kit prints it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub used_up: bool,
    /// Whether a step of the preparation makes it, such as a crank of a spoon and foil: the shopping list then has what the
    /// step takes, and not the thing.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub made: bool,
    /// What the host should know.
    #[serde(default)]
    pub about: String,
    /// What it is printed as, if the kit prints it: a banner, an envelope, a tag.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub printed: Option<Printed>,
}

/// A thing that lies somewhere.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Lying {
    /// The letter.
    Letter,
    /// A smaller text: `Note("first-note")`.
    Note(NoteId),
    /// A prop: `Prop("torch")`.
    Prop(PropId),
    /// A box: `Box("tin")`.
    Box(BoxId),
    /// A part of a puzzle: `Part("cuff", "word-card")`.
    Part(PuzzleId, String),
}

/// Two things that must not lie at one place, because side by side they say too much or get mixed up; or two parts of a
/// puzzle that may, though its mechanic would have them apart: `(one: Part("cuff", "word-card"), other: Part("cuff",
/// "key-card"), together: true)`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Apart {
    /// One of them.
    pub one: Lying,
    /// The other.
    pub other: Lying,
    /// Why, for the finding.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub why: String,
    /// Whether they may lie together after all: then nobody warns of it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub together: bool,
}

impl Apart {
    /// Whether it is about the same two things.
    #[must_use]
    pub fn same_pair(&self, other: &Self) -> bool {
        (self.one == other.one && self.other == other.other) || (self.one == other.other && self.other == other.one)
    }
}

/// The end of the party.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// The box that must open.
    pub opens: BoxId,
    /// The closing card that lies in it.
    pub card: NoteId,
    /// What the treat is, for the host's shopping list; allergens are the host's to check.
    #[serde(default)]
    pub treat: String,
    /// What you do when the last box opens, in a sentence or two, such as "Ring the bell behind the door."; empty where
    /// guests need nothing but the card. The host guide tells it at the end of the evening and has it undone for the next
    /// group.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub cue: String,
    /// How much of the treat one group needs: `All(1)` where one cake does for all.
    #[serde(default, skip_serializing_if = "HowMany::is_usual")]
    pub amount: HowMany,
}
