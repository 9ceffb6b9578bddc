//! The bills worked out, for the host.

use super::{View, read};
use crate::mechanics::solved::Solved;

pub(super) fn solved(view: &View) -> Option<Solved> {
    let prices = read::prices(view)?;
    let bills = view.bills.iter().zip(1..).map(|(bill, number)| {
        let bought = || bill.pieces.iter().zip(&view.things).zip(&prices).filter(|((count, _), _)| **count > 0);
        let things: Vec<String> = bought().map(|((count, thing), _)| format!("{count} × {thing}")).collect();
        let sums: Vec<String> = bought().map(|((count, _), price)| format!("{count} × {price}")).collect();
        vec![format!("Bill {number}"), things.join(", "), format!("{} = {}", sums.join(" + "), bill.total)]
    });
    let each = view.things.iter().zip(&prices).map(|(thing, price)| format!("{thing} {price}")).collect::<Vec<_>>();
    let says = format!("The prices are: {}.", each.join(", "));
    let head = ["Bill", "On it", "With the prices"].map(str::to_owned).to_vec();
    Some(Solved::Table { says, head, rows: bills.collect() })
}
