use super::{Carrier, Direction, LastingInk, Symbol, View};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::slips::{self, Slip};
use crate::readings::tokens::{Mark, Order, Way, read, turned};
use crate::readings::{Budget, Readings};

/// What stays after wiping, read every way that the marks leave open.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut stays: Vec<&Symbol> = view.symbols.iter().filter(|symbol| symbol.lasting).collect();
    stays.sort_by(|a, b| a.row.cmp(&b.row).then(a.at.total_cmp(&b.at)));
    let marks: Vec<Mark> = stays
        .iter()
        .enumerate()
        .map(|(index, symbol)| Mark::new(format!("{} (lasting symbol {})", symbol.text, index + 1), symbol.text))
        .collect();
    let mut found = match view.carrier {
        Carrier::Jar => {
            let way = match view.direction {
                Direction::Rightwards => Way::Rightwards,
                Direction::Leftwards => Way::Leftwards,
                Direction::Unstated => Way::Unstated,
            };
            read(&marks, &Order::Ring { start: view.start, way }, lock, budget)
        }
        Carrier::Tile => {
            let mut found = read(&marks, &Order::Listed, lock, budget);
            let text: String = stays.iter().map(|symbol| symbol.text).collect();
            if let (false, Some(other)) = (view.start, turned(&text)) {
                found.add(lock, &other, "the tile held upside down");
            }
            found
        }
    };
    if let Some(gap) = nearest(view)
        && gap < limits::FINGER_MM
    {
        found.remarks.push(format!(
            "a lasting symbol stands {gap:.0} mm from a wipe-off one, closer than a finger's width: a wipe can smear it"
        ));
    }
    found
}

/// Millimetres from a lasting symbol to the nearest wipe-off one in its row; a jar's row closes on itself.
fn nearest(view: &View) -> Option<f64> {
    let apart = |a: &Symbol, b: &Symbol| {
        let straight = (a.at - b.at).abs();
        match view.carrier {
            Carrier::Jar => straight.min(view.around_mm - straight),
            Carrier::Tile => straight,
        }
    };
    let (stay, go): (Vec<&Symbol>, Vec<&Symbol>) = view.symbols.iter().partition(|symbol| symbol.lasting);
    stay.iter().flat_map(|a| go.iter().filter(|b| b.row == a.row).map(|b| apart(a, b))).min_by(f64::total_cmp)
}

/// Guests who do not look for the mark, or go the other way round from it.
pub(super) fn slips(view: &View, lock: &LockKind) -> Vec<Slip> {
    if view.carrier == Carrier::Tile {
        let unmarked = View { start: false, ..view.clone() };
        return slips::without(&LastingInk, &unmarked, lock, "they hold it upside down: ask where the mark is.");
    }
    let mut stays: Vec<&Symbol> = view.symbols.iter().filter(|symbol| symbol.lasting).collect();
    stays.sort_by(|a, b| a.at.total_cmp(&b.at));
    let mut right: String = stays.iter().map(|symbol| symbol.text).collect();
    let left: String = right.chars().rev().collect();
    let other = match view.direction {
        Direction::Rightwards => left,
        Direction::Leftwards => std::mem::replace(&mut right, left),
        Direction::Unstated => return Vec::new(),
    };
    let mut later = right.chars();
    let first = later.next();
    let turned: String = later.chain(first).collect();
    vec![
        (other, "they went the wrong way round: the lid says which."),
        (turned, "they did not begin at the thick line: ask where the row begins."),
    ]
}
