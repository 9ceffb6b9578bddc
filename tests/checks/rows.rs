//! The fixtures of all checks: what they share here, the rows by subject beside it.

#[path = "rows/codes.rs"]
mod codes;
#[path = "rows/flow.rs"]
mod flow;
#[path = "rows/host.rs"]
mod host;
#[path = "rows/print.rs"]
mod print;
#[path = "rows/readings.rs"]
mod readings;
#[path = "rows/wiring.rs"]
mod wiring;

use inklatch::checks::SetPiece;
use inklatch::diag::Anchor;
use inklatch::face::Audience;
use inklatch::ids::{BoxId, LockId, PropId, SpotId};
use inklatch::kit::{Place, Prop, PropRole, RawSetup};
use inklatch::party::Party;
use inklatch::print::Fit;
use inklatch::readings::{Reading, Readings, Verdict};
use inklatch::units::{Mm, Pt};

use super::{Case, words};

/// Changes what was computed.
type After = fn(&mut Party, &mut Vec<SetPiece>);

/// The fixtures of one check: changes to the sound kit, and to what was computed from it.
pub struct Row {
    pub name: &'static str,
    pub says: &'static str,
    pub fires: fn(&mut Case),
    pub fires_after: After,
    pub silent: fn(&mut Case),
    pub silent_after: After,
    /// Whether its fixes take the findings away.
    pub mends: bool,
}

pub const fn row(name: &'static str, says: &'static str, fires: fn(&mut Case), silent: fn(&mut Case)) -> Row {
    Row { name, says, fires, fires_after: |_, _| {}, silent, silent_after: |_, _| {}, mends: false }
}

pub const fn computed(name: &'static str, says: &'static str, fires: After, silent: After) -> Row {
    Row { name, says, fires: |_| {}, fires_after: fires, silent: |_| {}, silent_after: silent, mends: false }
}

pub const fn mending(mut row: Row) -> Row {
    row.mends = true;
    row
}

pub fn lock(id: &str) -> LockId {
    LockId::new(id).unwrap()
}

pub fn spot(id: &str) -> Place {
    Place::Spot(SpotId::new(id).unwrap())
}

pub fn inside(id: &str) -> Place {
    Place::Box(BoxId::new(id).unwrap())
}

pub fn setup(case: &mut Case, puzzle: usize, ron: &str) {
    case.kit.puzzles[puzzle].setup = RawSetup::new(ron).unwrap();
}

pub fn prop(id: &str, place: Place, material: &str) -> Prop {
    Prop {
        id: PropId::new(id).unwrap(),
        name: format!("the {id}"),
        role: PropRole::Decoration,
        place,
        material: material.into(),
        amount: Default::default(),
        used_up: false,
        made: false,
        about: String::new(),
        printed: None,
    }
}

pub fn read_as(party: &mut Party, answers: &[&str], verdict: Verdict) {
    let list = answers.iter().map(|a| Reading { answer: (*a).into(), why: format!("reads {a}") }).collect();
    party.puzzles[0].readings = Readings { list, ..Readings::default() };
    party.puzzles[0].verdict = Some(verdict);
}

pub fn set(size: f64, overflows: bool, audience: Audience) -> SetPiece {
    let fit = Fit {
        from: Anchor::Kit,
        size: Pt::new(size),
        least: Pt::new(9.0),
        overflows,
        height: Mm::new(5.0),
        words: "Two cards".into(),
        piece: String::new(),
    };
    SetPiece {
        ink: None,
        piece: "p".into(),
        audience,
        paper: None,
        fits: vec![fit],
        missing: Vec::new(),
        printed: Vec::new(),
        trouble: None,
    }
}

/// One row for each check.
pub fn rows() -> Vec<Row> {
    let mut rows = readings::readings();
    rows.extend(print::print());
    rows.extend(wiring::wiring());
    rows.extend(flow::flow());
    rows.extend(codes::codes());
    rows.extend(words::texts());
    rows.extend(words::safety());
    rows.extend(host::host());
    rows.extend(words::dress());
    rows
}
