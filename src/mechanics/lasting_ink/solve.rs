use super::{Carrier, Direction, Symbol, View};
use crate::kit::LockKind;
use crate::limits;
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
