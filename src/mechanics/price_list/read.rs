use super::{Bill, View};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::readings::tokens::Spent;
use crate::readings::{Budget, Readings};

/// The dearest price that a digit wheel can show; the sheet states it.
pub(super) const DEAREST: u32 = 9;

/// Every way to price the things in whole coins from 0 to 9 that agrees with all bills.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    let count = view.things.len();
    if count > limits::BILL_THINGS
        || view.bills.iter().any(|bill| bill.pieces.len() != count)
        || view.asked.iter().any(|at| *at >= count)
    {
        readings.remarks.push("a bill or the list names a thing that is not sold".into());
        return readings;
    }
    let (mut prices, mut ways) = (Vec::new(), 0_u64);
    let done = walk(view, &mut prices, budget, &mut |prices| {
        ways += 1;
        let price = |at: usize| prices.get(at).copied().unwrap_or_default();
        let answer: String = view.asked.iter().map(|at| price(*at).to_string()).collect();
        let steps: Vec<String> =
            view.things.iter().zip(prices).map(|(thing, price)| format!("{thing} {price}")).collect();
        readings.add(lock, &answer, steps.join(", "));
        !readings.more
    });
    readings.unproven = done.is_err();
    if ways == 0 && !readings.unproven {
        readings.remarks.push(format!(
            "no prices in whole {} from 0 to {DEAREST} agree with all bills",
            if view.coin.is_empty() { "coins" } else { view.coin.as_str() }
        ));
    }
    let settled = rank(&view.bills, count);
    if settled < count {
        readings
            .remarks
            .push(format!("the bills settle {settled} of {count} prices: the rest must be tried out, or stays open"));
    }
    readings
}

/// The price of each thing; none where the bills do not settle them.
pub(super) fn prices(view: &View) -> Option<Vec<u32>> {
    if view.things.len() > limits::BILL_THINGS || view.bills.iter().any(|bill| bill.pieces.len() != view.things.len()) {
        return None;
    }
    let mut found: Vec<Vec<u32>> = Vec::new();
    walk(view, &mut Vec::new(), &mut Budget::new(limits::GRID_STEPS), &mut |prices| {
        found.push(prices.to_vec());
        found.len() < 2
    })
    .ok()?;
    let [only] = <[Vec<u32>; 1]>::try_from(found).ok()?;
    Some(only)
}

/// The thing that stands on the most bills, and its price; none where the bills do not settle the prices.
pub(super) fn a_price(view: &View) -> Option<(&str, u32)> {
    let only = prices(view)?;
    let bills =
        |at: &usize| view.bills.iter().filter(|bill| bill.pieces.get(*at).is_some_and(|count| *count > 0)).count();
    let at = (0..view.things.len()).max_by_key(bills)?;
    Some((view.things.get(at)?.as_str(), *only.get(at)?))
}

fn walk(
    view: &View,
    prices: &mut Vec<u32>,
    budget: &mut Budget,
    found: &mut dyn FnMut(&[u32]) -> bool,
) -> Result<bool, Spent> {
    if prices.len() == view.things.len() {
        return Ok(found(prices));
    }
    for price in 0..=DEAREST {
        if !budget.step() {
            return Err(Spent);
        }
        prices.push(price);
        let go_on = !view.bills.iter().all(|bill| may(bill, prices)) || walk(view, prices, budget, found)?;
        prices.pop();
        if !go_on {
            return Ok(false);
        }
    }
    Ok(true)
}

/// Whether a bill can come to its total when the first things cost what is set, and the others anything allowed.
fn may(bill: &Bill, prices: &[u32]) -> bool {
    let set: u64 = bill.pieces.iter().zip(prices).map(|(count, price)| u64::from(*count) * u64::from(*price)).sum();
    let open: u64 = bill.pieces.iter().skip(prices.len()).map(|count| u64::from(*count) * u64::from(DEAREST)).sum();
    (set..=set + open).contains(&u64::from(bill.total))
}

/// How many bills do not follow from the others: the rank of their pieces, by elimination modulo a prime so large
/// that no minor of such small numbers is a multiple of it (Hadamard's bound: 6 things of at most 9 pieces stay
/// below 9^6 · 6^3, about 1.2 · 10^8). Larger pieces, which no setup makes, may count as fewer, never as more.
pub(super) fn rank(bills: &[Bill], things: usize) -> usize {
    const PRIME: u64 = 2_147_483_647;
    let mut rows: Vec<Vec<u64>> = bills
        .iter()
        .map(|bill| (0..things).map(|at| u64::from(bill.pieces.get(at).copied().unwrap_or(0)) % PRIME).collect())
        .collect();
    let mut rank = 0;
    for col in 0..things {
        let Some(pivot) = (rank..rows.len()).find(|row| rows[*row][col] != 0) else { continue };
        rows.swap(rank, pivot);
        let lead = rows[rank].clone();
        for row in rows.iter_mut().skip(rank + 1) {
            // row · lead[col] - lead · row[col]: no division is needed, and the lead is no multiple of the prime.
            let factor = row[col];
            for (cell, head) in row.iter_mut().zip(&lead) {
                *cell = (*cell * lead[col] + (PRIME - head * factor % PRIME)) % PRIME;
            }
        }
        rank += 1;
    }
    rank
}

pub(super) fn slips(view: &View) -> Vec<Slip> {
    let Some(prices) = prices(view) else { return Vec::new() };
    let mut sold = view.asked.clone();
    sold.sort_unstable();
    let text = sold.iter().filter_map(|at| prices.get(*at)).map(u32::to_string).collect();
    vec![(text, "they took the prices in the order of the bills: the list at the foot gives the order.")]
}
