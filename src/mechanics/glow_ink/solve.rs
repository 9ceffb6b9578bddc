use super::{Paper, Told, View};
use crate::kit::LockKind;
use crate::mechanics::slips::Slip;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};

/// What the torch shows, in every order that the note leaves open.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let marks: Vec<Mark> = view
        .writings
        .iter()
        .map(|writing| {
            let text: String = writing.symbols.iter().collect();
            Mark::new(writing.place.words(), text).loose(view.loose && !view.baseline)
        })
        .collect();
    let order = match view.order {
        _ if view.writings.len() < 2 => Order::Listed,
        Told::Open => Order::open(),
        Told::Pages => Order::Partial(by_page(view)),
        Told::Listed => {
            let fits = |name: &String| {
                let at = view.writings.iter().enumerate().filter(|(_, writing)| writing.place.words() == *name);
                Cue { label: name.clone(), marks: at.map(|(index, _)| index).collect() }
            };
            Order::Cued(view.listed.iter().map(fits).collect())
        }
    };
    let mut found = read(&marks, &order, lock, budget);
    if view.paper == Paper::White {
        found.remarks.push("white paper glows by itself under the torch and can drown the ink".into());
    }
    found
}

/// Which writing comes before which by page number; one without a number is not ordered at all.
fn by_page(view: &View) -> Vec<(usize, usize)> {
    let pages: Vec<u16> = view.writings.iter().map(|writing| writing.place.page).collect();
    let mut pairs = Vec::new();
    for (before, low) in pages.iter().enumerate() {
        let later = pages.iter().enumerate().filter(|(_, high)| *low > 0 && *high > low);
        pairs.extend(later.map(|(after, _)| (before, after)));
    }
    pairs
}

pub(super) fn slips(view: &View) -> Vec<Slip> {
    if view.order != Told::Listed || view.writings.len() < 2 {
        return Vec::new();
    }
    let found: String = view.writings.iter().flat_map(|writing| &writing.symbols).collect();
    vec![(found, "they took them as they found them: the note names another order.")]
}
