//! Things from a shop that a puzzle needs, and the steps in which a host prepares them.
//!
//! Cautions are data on the material, so a kit lists exactly those it needs. Each defers to local codes and
//! to the maker's label, which is said once, before them all ([`DEFERS`]).

use serde::Serialize;

mod caution;
mod table;

pub use caution::DEFERS;
pub use table::MATERIALS;

/// A thing from a shop.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Material {
    /// Stable name.
    pub id: &'static str,
    /// As written on a shopping list.
    pub name: &'static str,
    /// The unit counted in: "piece", "sheet", "metre".
    pub unit: &'static str,
    /// Size limits that matter, in words; empty where none do.
    pub size: &'static str,
    /// What will do instead.
    pub stand_in: &'static str,
    /// Whether most homes have it.
    pub at_home: bool,
    /// Whether it is used up by one party (else kept for the next group).
    pub used_up: bool,
    /// What can hurt, what to do about it, and whom to defer to; empty where nothing can.
    pub caution: &'static str,
    /// Where the caution comes from; empty where there is none.
    pub source: &'static str,
    /// Least age of a guest who may handle it, in years.
    pub least_age: u8,
}

/// So much of a material.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Need {
    /// The material's id.
    pub material: &'static str,
    /// How much, in the material's unit, for one group.
    pub amount: f64,
}

/// One step of the host's preparation.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PrepStep {
    /// Name within the puzzle, for `after`.
    pub key: &'static str,
    /// What to do, one or two sentences; empty where it is only printed and cut out with all the rest.
    pub what: String,
    /// What it takes.
    pub needs: Vec<Need>,
    /// Minutes of hands (estimate).
    pub hands: f64,
    /// Minutes of waiting afterwards: drying, curing (at least; the maker's label decides).
    pub wait: f64,
    /// Keys of steps of the same puzzle that come first.
    pub after: Vec<&'static str>,
}

impl PrepStep {
    /// What is only printed and cut out, as all pieces are: no work of its own, but it takes paper.
    #[must_use]
    pub fn printed(needs: Vec<Need>) -> Self {
        Self { key: "cut", what: String::new(), needs, hands: 0.0, wait: 0.0, after: Vec::new() }
    }
}

/// The material with this id.
#[must_use]
pub fn material(id: &str) -> Option<&'static Material> {
    MATERIALS.iter().find(|material| material.id == id)
}
