use std::collections::BTreeSet;

use rand::RngExt as _;
use rand::seq::SliceRandom as _;

use super::{Bill, Setup, View, read, work};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};
use crate::readings::Budget;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    digits_only(&answer)?;
    let count = answer.len();
    let names: BTreeSet<String> = setup.things.iter().map(|thing| thing.trim().to_lowercase()).collect();
    if names.len() != setup.things.len() || names.contains("") || setup.things.len() < count {
        return Err(Trouble::new(format!("the answer has {count} digits, and each takes a thing of its own"))
            .hint("list as many different `things`"));
    }
    if !(2..=limits::BILL_THINGS).contains(&count) {
        return Err(Trouble::new(format!("{count} prices make no price list"))
            .hint(format!("give the puzzle a lock of 2 to {} wheels", limits::BILL_THINGS)));
    }
    if !(1..=limits::BILL_PIECES).contains(&setup.most) || setup.spare > limits::BILL_SPARE {
        return Err(Trouble::new("bills of that many pieces, or that many bills, are no fun to add up").hint(format!(
            "take `most` from 1 to {} and `spare` up to {}",
            limits::BILL_PIECES,
            limits::BILL_SPARE
        )));
    }
    arranged(setup.work, rng, &mut |rng| bills(setup, &answer, job, rng), &work::work)
}

/// Bills that settle every price.
fn bills(setup: &Setup, answer: &[char], job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let count = answer.len();
    let mut things: Vec<String> = setup.things.iter().map(|thing| thing.trim().to_owned()).collect();
    things.shuffle(rng);
    things.truncate(count);
    // The list names the things in an order of its own, not that of the bills.
    let mut asked: Vec<usize> = (0..count).collect();
    asked.shuffle(rng);
    let mut prices = vec![0; count];
    for (place, digit) in asked.iter().zip(answer) {
        prices[*place] = digit.to_digit(10).unwrap_or_default();
    }
    for _ in 0..limits::GRID_STARTS {
        let mut bills: Vec<Bill> = match setup.work {
            Effort::Light => stairs(&prices, setup.most, rng),
            Effort::Fair | Effort::Deep => Vec::new(),
        };
        for _ in 0..limits::GRID_STARTS {
            let bill = bill(&prices, setup.most, rng);
            let grown = |bills: &[Bill]| {
                let mut more = bills.to_vec();
                more.push(bill.clone());
                read::rank(&more, count) > read::rank(bills, count)
            };
            if grown(&bills) {
                bills.push(bill);
            }
        }
        for _ in 0..setup.spare {
            let bill = bill(&prices, setup.most, rng);
            if !bills.contains(&bill) {
                bills.push(bill);
            }
        }
        bills.shuffle(rng);
        let view = View { things: things.clone(), coin: setup.coin.trim().to_owned(), bills, asked: asked.clone() };
        let found = read::readings(&view, job.lock, &mut Budget::new(limits::GRID_STEPS));
        if found.list.len() == 1 && found.remarks.is_empty() && !found.unproven {
            return Ok(view);
        }
    }
    Err(Trouble::new("no bills were found that settle every price").hint("set `most` to 2 or more"))
}

/// Bills of which the first names one thing, and each that follows one thing more and one that is known by then.
fn stairs(prices: &[u32], most: u8, rng: &mut Rng) -> Vec<Bill> {
    let mut places: Vec<usize> = (0..prices.len()).collect();
    places.shuffle(rng);
    let mut bills = Vec::new();
    for (step, place) in places.iter().enumerate() {
        let mut pieces = vec![0; prices.len()];
        pieces[*place] = rng.random_range(1..=u32::from(most));
        if step > 0 {
            pieces[places[rng.random_range(0..step)]] = rng.random_range(1..=u32::from(most));
        }
        bills.push(totalled(pieces, prices));
    }
    bills
}

/// A bill of two or three different things; the first starts at one piece more often than not, to keep sums small.
fn bill(prices: &[u32], most: u8, rng: &mut Rng) -> Bill {
    let mut places: Vec<usize> = (0..prices.len()).collect();
    places.shuffle(rng);
    places.truncate(rng.random_range(2..=3));
    let mut pieces = vec![0; prices.len()];
    for place in places {
        pieces[place] = rng.random_range(1..=u32::from(most));
    }
    totalled(pieces, prices)
}

fn totalled(pieces: Vec<u32>, prices: &[u32]) -> Bill {
    let total = pieces.iter().zip(prices).map(|(count, price)| count * price).sum();
    Bill { pieces, total }
}
