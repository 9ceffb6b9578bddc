//! What it says: help, hints, and how guests get to the answer.

use super::read::DEAREST;
use super::{Bill, SHEET, View, read};
use crate::kit::HintLadder;
use crate::mechanics::Dressing;
use crate::script::capital;

pub(super) fn name<'a>(cx: &Dressing<'a>) -> &'a str {
    cx.name(SHEET, "the sheet of bills")
}

/// What the sheet tells about the prices.
pub(super) fn rule(view: &View) -> String {
    let coin = if view.coin.is_empty() { "coins" } else { view.coin.as_str() };
    format!("Every piece of a thing costs the same on all bills. Prices are whole {coin}, from 0 (free) to {DEAREST}.")
}

pub(super) fn reason(view: &View, cx: &Dressing<'_>) -> String {
    format!("From {} guests work out what one piece of each thing costs. {}", name(cx), view.order())
}

pub(super) fn draft_hints(view: &View, cx: &Dressing<'_>) -> HintLadder {
    let sheet = name(cx);
    HintLadder {
        nudge: format!("{} add up. What does a single piece of each thing cost?", capital(sheet)),
        method: format!(
            "Compare two bills of {sheet} that share a thing: what one has more makes up the difference between them. {}",
            begin(view)
        ),
        giveaway: match read::a_price(view) {
            Some((thing, price)) => format!(
                "A single {thing} costs {price}. Write that into every bill that has it, and work out the others bill by bill. \
                 Then read the prices in the order of the list at the foot and set them on {}.",
                cx.lock_name
            ),
            None => format!(
                "Try a price for one thing of {sheet}, work out the others bill by bill, and go on until all bills agree. \
                 Then read the prices in the order of the list at the foot and set them on {}.",
                cx.lock_name
            ),
        },
    }
}

/// Where a person does well to begin: at a bill with one thing alone, or at two bills of which one has all that the
/// other has, and little more.
fn begin(view: &View) -> String {
    let kinds = |bill: &Bill| bill.pieces.iter().filter(|count| **count > 0).count();
    let alone = view.bills.iter().find(|bill| kinds(bill) == 1);
    if let Some(thing) = alone.and_then(|bill| bill.pieces.iter().position(|count| *count > 0)) {
        return format!(
            "Begin with the bill that names nothing but {}.",
            view.things.get(thing).map_or("", String::as_str)
        );
    }
    // A bill is named by its total, so that total must be its own.
    let own = |bill: &Bill| view.bills.iter().filter(|other| other.total == bill.total).count() == 1;
    let more = |less: &Bill, more: &Bill| {
        let pairs = || less.pieces.iter().zip(&more.pieces);
        let has_all = less.total <= more.total && pairs().all(|(a, b)| a <= b);
        has_all.then(|| pairs().filter(|(a, b)| a < b).count())
    };
    let pairs = view.bills.iter().flat_map(|less| view.bills.iter().map(move |more| (less, more)));
    let told = pairs.filter(|(less, more)| less != more && own(less) && own(more));
    let best = told.filter_map(|(a, b)| Some((more(a, b)?, a, b))).min_by_key(|(kinds, ..)| *kinds);
    match best {
        Some((_, less, more)) => {
            format!("Begin with the bills that come to {} and to {}.", less.total, more.total)
        }
        None => "Begin with the bill that has the fewest pieces: only a few prices suit it.".into(),
    }
}

pub(super) const HELP: &str = "\
## What it does
Bills name several things, how many of each, and what they cost together. Guests work out the price of one piece of \
each, and read the prices in the order of a list at the foot. Prices are whole and from 0 to 9, and the sheet says so. \
The answer must be digits, one thing for each.

## Setup
- `things`: what is sold, in the singular, at least as many as the answer has digits; which are used is drawn by chance.
- `coin`: what the prices are counted in: \"pennies\", \"crowns\".
- `most`: the most pieces of one thing on a bill, 1 to 5.
- `spare`: bills beyond those that are needed, up to 4; they make it easier.
- `work`: `Light`: the bills can be taken so that each leaves one price open. `Fair`: any that settle the prices. `Deep`: \
of several sets of bills the one that takes the most comparing and trying.

## Example
(
    things: [\"candle\", \"ball of wool\", \"tin of polish\", \"sledge rope\", \"bell\"],
    coin: \"crowns\",
    most: 2,
    spare: 1,
)

## Traps
- Fewer bills that say something of their own than there are prices: remarked; several readings where whole prices do \
not settle it.
- Bills that would need parts of a coin, or more than 9: no reading, and a remark.";
