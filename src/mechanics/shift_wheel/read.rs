//! Turns the message by every setting and direction that the card leaves open.

use super::{Ring, View, turned};
use crate::kit::LockKind;
use crate::readings::{Budget, Readings};

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    let count = view.ring.len();
    let place = |symbol: char| view.ring.iter().position(|other| *other == symbol);
    for symbol in &view.message {
        if place(*symbol).is_none() {
            all.remarks.push(format!("the wheel has no {symbol}, and the message needs it"));
        }
    }
    let shifts: Vec<usize> = match view.setting {
        Some(setting) => place(setting).into_iter().collect(),
        None => (0..count).collect(),
    };
    if let (Some(_), [shift]) = (view.setting, shifts.as_slice()) {
        if *shift == 0 {
            all.remarks.push("the setting changes nothing: the message is the answer".into());
        } else if shift * 2 == count {
            all.remarks.push("the setting is half a turn: both directions read the same".into());
        }
    }
    let directions: Vec<Ring> = view.from.map_or_else(|| vec![Ring::Outer, Ring::Inner], |from| vec![from]);
    for shift in shifts {
        for from in &directions {
            if !budget.step() {
                all.unproven = true;
                return all;
            }
            // From the outer ring inwards a symbol goes back by the shift.
            let read = |symbol: &char| view.ring.get(turned(place(*symbol)?, shift, count, *from == Ring::Inner));
            let Some(answer) = view.message.iter().map(read).collect::<Option<String>>() else { continue };
            let way = match from {
                Ring::Outer => "from the outer ring inwards",
                Ring::Inner => "from the inner ring outwards",
            };
            let at = view.ring.get(shift).copied().unwrap_or(' ');
            all.add(lock, &answer, format!("start mark at {at}, {way}"));
        }
    }
    all
}
