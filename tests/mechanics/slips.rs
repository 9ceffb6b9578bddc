//! Wrong answers to which a slip of a pattern leads: real, shown by the lock, and never the answer.

use inklatch::kit::LockKind;
use inklatch::limits;
use inklatch::mechanics::sample::{carried, locks};
use inklatch::mechanics::slips::told;
use inklatch::mechanics::{MECHANICS, find};
use inklatch::readings::same_answer;
use serde_json::{Value, json};

use crate::common::{plain_theme, rng};

#[test]
fn every_slip_can_be_set_and_is_wrong() {
    let theme = plain_theme();
    let mut having = Vec::new();
    for mechanic in MECHANICS {
        let id = mechanic.meta().id;
        let setup = mechanic.default_setup().unwrap();
        let mut seen = false;
        for lock in locks() {
            for seed in 0..10 {
                let Some((answer, view)) = carried(*mechanic, &setup, &lock, &theme, &|_| false, &mut rng(seed)) else {
                    continue;
                };
                let slips = told(&*view, &lock, &answer);
                assert!(slips.len() <= limits::SLIPS, "{id}: {slips:?}");
                for (index, (other, why)) in slips.iter().enumerate() {
                    assert!(lock.spells(other) && !same_answer(other, &answer), "{id}: {other} for {answer}");
                    assert!(slips[..index].iter().all(|(known, _)| !same_answer(known, other)), "{id}: {slips:?}");
                    assert!(why.starts_with("the") && why.ends_with('.'), "{id}: {why}");
                    seen = true;
                }
            }
        }
        if seen {
            having.push(id);
        }
    }
    let all = [
        "lasting-ink",
        "marked-letters",
        "magnet-field",
        "number-place",
        "logic-grid",
        "truth-tellers",
        "leftover-letters",
        "balance-cards",
        "price-list",
        "domino-chain",
        "morse-strip",
        "grid-square",
        "clock-faces",
        "shift-wheel",
        "semaphore-figures",
        "fork-maze",
        "count-scene",
        "route-map",
        "mask-card",
    ];
    assert_eq!(having, all);
}

/// The slips of a view, by what they lead to.
fn of(id: &str, view: &Value, lock: &LockKind, answer: &str) -> Vec<String> {
    let view = find(id).unwrap().view(view).unwrap();
    told(&*view, lock, answer).into_iter().map(|(other, _)| other).collect()
}

#[test]
fn marked_letters_as_they_stand_on_the_sign() {
    let cells: Vec<Value> = [('T', "1"), ('O', "2"), ('W', "3"), ('E', "4"), ('R', "5")]
        .map(|(letter, mark)| json!({ "letter": letter, "mark": mark }))
        .to_vec();
    let pointer = json!({ "says": { "Letters": ["R", "T", "W"] }, "rule": true, "equal_rule": false });
    let view = json!({ "heading": "", "lines": [cells], "pointer": pointer });
    assert_eq!(of("marked-letters", &view, &LockKind::Digits(3), "513"), ["135"]);
    // In the order of the sign there is no such slip.
    let mut same = view;
    same["pointer"]["says"] = json!({ "Letters": ["T", "W", "R"] });
    assert!(of("marked-letters", &same, &LockKind::Digits(3), "135").is_empty());
}

#[test]
fn a_domino_row_read_from_a_free_end() {
    let view = json!({ "card_text": "", "pieces": [[1, 2], [2, 5], [5, 0]], "first": 0, "arrows": false });
    assert_eq!(of("domino-chain", &view, &LockKind::Digits(2), "25"), ["12", "50"]);
}

#[test]
fn the_badges_of_the_others() {
    let speaker = |name: &str, badge: &str, says: Value| json!({ "name": name, "badge": badge, "says": says });
    // If Ben spoke falsely, Ada would be both: so she does not tell the truth and he does, Cleo as well, and Dan not.
    let view = json!({
        "speakers": [
            speaker("Ada", "4", json!({ "False": 1 })),
            speaker("Ben", "7", json!({ "Unlike": [0, 1] })),
            speaker("Cleo", "2", json!({ "False": 0 })),
            speaker("Dan", "9", json!({ "False": 2 })),
        ],
        "liars": null,
    });
    assert_eq!(of("truth-tellers", &view, &LockKind::Digits(2), "72"), ["49"]);
    // With two cases that fit, nobody can say whose badges were taken.
    let open = json!({
        "speakers": [speaker("Ada", "4", json!({ "False": 1 })), speaker("Ben", "7", json!({ "False": 0 }))],
        "liars": null,
    });
    assert!(of("truth-tellers", &open, &LockKind::Digits(1), "4").is_empty());
}

#[test]
fn a_price_list_in_the_order_of_the_bills() {
    let view = json!({
        "things": ["an apple", "a nut"],
        "coin": "",
        "bills": [{ "pieces": [1, 0], "total": 3 }, { "pieces": [1, 1], "total": 8 }],
        "asked": [1, 0],
    });
    assert_eq!(of("price-list", &view, &LockKind::Digits(2), "53"), ["35"]);
}

#[test]
fn writings_as_they_are_found_and_not_as_the_note_lists_them() {
    let writing =
        |name: &str, page: u16, symbol: &str| json!({ "place": { "name": name, "page": page }, "symbols": [symbol] });
    let mut view = json!({
        "writings": [writing("the map", 4, "7"), writing("the list", 9, "2"), writing("the end", 30, "5")],
        "order": "listed",
        "listed": ["the end (page 30)", "the map (page 4)", "the list (page 9)"],
        "paper": "tinted", "loose": false, "baseline": true, "jacket": false,
        "jacket_title": "", "jacket_text": "", "note_title": "", "note_text": "",
    });
    assert_eq!(of("glow-ink", &view, &LockKind::Digits(3), "572"), ["725"]);
    // Where the note says to go by the pages, they are found in that order.
    view["order"] = json!("pages");
    assert!(of("glow-ink", &view, &LockKind::Digits(3), "725").is_empty());
}
