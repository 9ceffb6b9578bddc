use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::{Value, json};

use crate::common::{dressed, lay_out};

fn read(bills: &[(&[u32], u32)], asked: &[usize]) -> Readings {
    let names = ["bun", "cup", "nut"];
    let count = bills.first().map_or(0, |bill| bill.0.len());
    let bills: Vec<Value> = bills.iter().map(|(pieces, total)| json!({ "pieces": pieces, "total": total })).collect();
    let view = json!({ "things": names[..count], "coin": "pennies", "bills": bills, "asked": asked });
    let lock = LockKind::Digits(u8::try_from(asked.len()).unwrap());
    find("price-list").unwrap().view(&view).unwrap().readings(&lock, &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn prices_are_read_in_the_order_of_the_list() {
    // bun + cup = 7, 2 buns + cup = 9, cup + nut = 8.
    let found = read(&[(&[1, 1, 0], 7), (&[2, 1, 0], 9), (&[0, 1, 1], 8)], &[2, 0, 1]);
    assert_eq!(answers(&found), ["325"]);
    assert_eq!(found.list[0].why, "bun 2, cup 5, nut 3");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn too_few_bills_read_in_many_ways() {
    let found = read(&[(&[1, 1], 3), (&[2, 2], 6)], &[0, 1]);
    assert_eq!(answers(&found), ["03", "12", "21", "30"]);
    assert!(found.remarks.iter().any(|remark| remark.contains("settle 1 of 2")), "{found:?}");
    // Whole prices settle it although the bills alone do not; guests must try.
    let found = read(&[(&[1, 1], 18)], &[0, 1]);
    assert_eq!(found.verdict("99"), Verdict::One);
    assert!(!found.remarks.is_empty());
}

#[test]
fn parts_of_a_coin_and_prices_beyond_a_wheel_have_no_reading() {
    for bills in [[(&[2_u32, 0][..], 5), (&[0, 1][..], 3)], [(&[1, 0][..], 12), (&[0, 1][..], 3)]] {
        let found = read(&bills, &[0, 1]);
        assert!(found.list.is_empty(), "{found:?}");
        assert!(found.remarks.iter().any(|remark| remark.contains("whole pennies")), "{found:?}");
    }
}

#[test]
fn bills_of_things_that_are_not_sold_and_great_numbers() {
    assert!(!read(&[(&[1, 1], 3)], &[0, 7]).remarks.is_empty());
    let found = read(&[(&[u32::MAX, u32::MAX], u32::MAX), (&[1, 0], 1)], &[0, 1]);
    assert_eq!(answers(&found), ["10"]);
    let view = json!({ "things": ["a", "b", "c", "d"], "coin": "", "bills": [], "asked": [0, 0, 0, 0] });
    let view = find("price-list").unwrap().view(&view).unwrap();
    assert_eq!(view.readings(&LockKind::Digits(4), &mut Budget::new(5)).verdict("0000"), Verdict::Unproven);
}

#[test]
fn setups_carry_their_answers() {
    let mechanic = find("price-list").unwrap();
    for (setup, answer, bills) in [("()", "000", 3), ("(most: 1, spare: 2)", "909", 3), ("(spare: 2)", "123456", 8)] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        for seed in 0..5 {
            let view = lay_out(mechanic, setup, answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{setup} {answer}: {found:?}");
            assert!(found.remarks.is_empty(), "{setup} {answer}: {found:?}");
            assert!(view.json()["bills"].as_array().unwrap().len() >= bills.min(answer.len()), "{setup}");
            assert!(dressed("price-list", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
}

#[test]
fn refusals_say_what_to_change() {
    let mechanic = find("price-list").unwrap();
    for (setup, answer) in [
        ("(things: [\"bun\", \"bun\", \"cup\"])", "123"),
        ("(things: [\"bun\", \"cup\"])", "123"),
        ("(most: 0)", "123"),
        ("(spare: 99)", "123"),
        ("()", "7"),
    ] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let trouble = lay_out(mechanic, setup, answer, &lock, 1).err().unwrap();
        assert!(!trouble.hints.is_empty(), "{setup}: {trouble}");
    }
}
