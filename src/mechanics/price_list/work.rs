//! The prices as a person works them out, bill by bill.

use super::View;
use super::read::DEAREST;
use crate::limits;
use crate::mechanics::work::{Work, counted};

/// Bills that leave one price open, pairs of bills that are compared, and prices that must be tried out.
///
/// A bill with one open price counts 1; two bills compared until one price is left 4; a price tried out 8 (the weights
/// are our estimate).
pub(super) fn work(view: &View) -> Option<Work> {
    let things = view.things.len();
    if things > limits::BILL_THINGS || view.bills.iter().any(|bill| bill.pieces.len() != things) {
        return None;
    }
    let mut known = vec![false; things];
    let (mut divided, mut compared, mut tried) = (0, 0, 0);
    while let Some(open) = known.iter().position(|known| !known) {
        let rests: Vec<Vec<u32>> = view
            .bills
            .iter()
            .map(|bill| bill.pieces.iter().zip(&known).map(|(count, known)| if *known { 0 } else { *count }).collect())
            .collect();
        if let Some(at) = rests.iter().find_map(|rest| alone(rest.iter().map(|count| i64::from(*count)))) {
            divided += 1;
            known[at] = true;
        } else if let Some(at) = by_two(&rests) {
            compared += 1;
            known[at] = true;
        } else {
            // A person tries the prices of the thing that most bills name.
            let most = |at: &usize| rests.iter().filter(|rest| rest[*at] > 0).count();
            let at = (0..things).filter(|at| !known[*at]).max_by_key(most).unwrap_or(open);
            tried += 1;
            known[at] = true;
        }
    }
    let trial = match tried {
        0 => String::new(),
        1 => format!(" One price must be tried out, from 0 to {DEAREST}, until all the bills come out right."),
        tried => format!(" {tried} prices must be tried out, from 0 to {DEAREST}, until all the bills come out right."),
    };
    let by_one = match divided {
        0 => String::new(),
        _ => format!(" {} found on one bill, less what is known already.", are(divided)),
    };
    let by_two = match compared {
        0 => String::new(),
        _ => format!(" {} found by comparing two bills.", are(compared)),
    };
    let says = format!(
        "Guests work out the prices of {} one after another.{by_two}{by_one}{trial}",
        counted(things, "thing"),
    );
    Some(Work::new(divided + 4 * compared + 8 * tried, says))
}

fn are(prices: usize) -> String {
    if prices == 1 { "One price is".to_owned() } else { format!("{prices} prices are") }
}

/// The only place that is not zero.
fn alone(counts: impl Iterator<Item = i64>) -> Option<usize> {
    let mut places = counts.enumerate().filter(|(_, count)| *count != 0).map(|(at, _)| at);
    let first = places.next()?;
    places.next().is_none().then_some(first)
}

/// A thing whose price is left when so many times one bill are taken from so many times another.
fn by_two(rests: &[Vec<u32>]) -> Option<usize> {
    let times = 1..=i64::from(limits::BILL_PIECES);
    for (index, a) in rests.iter().enumerate() {
        for b in &rests[index + 1..] {
            for (m, n) in times.clone().flat_map(|m| times.clone().map(move |n| (m, n))) {
                let left = a.iter().zip(b).map(|(a, b)| i64::from(*a) * m - i64::from(*b) * n);
                if let Some(at) = alone(left) {
                    return Some(at);
                }
            }
        }
    }
    None
}
