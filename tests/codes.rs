//! Tests of `codes`: counts against references and by brute force, numerals, and what texts tell.

use inklatch::codes::{
    Guess, Known, Left, Repeats, as_set, chance_within, codes, guess, left, mean_tries, minutes, orderings, roman,
};
use inklatch::kit::LockKind;
use serde_json::Value;

fn cases(text: &str) -> Vec<Value> {
    serde_json::from_str::<Value>(text).unwrap()["cases"].as_array().unwrap().clone()
}

/// Source: tests/refs/04_combinatorics.json (closed forms and brute force; exact, floats to 1e-12 relative).
#[test]
fn counts_agree_with_the_reference() {
    let close = |a: f64, b: f64| (a - b).abs() <= 1e-12 * b.abs();
    let mut seen = [0; 4];
    for case in cases(include_str!("refs/04_combinatorics.json")) {
        let (input, expected) = (&case["input"], &case["expected"]);
        let number = |value: &Value| value.as_u64().unwrap();
        match case["kind"].as_str().unwrap() {
            "multiset_orderings" => {
                let digits: Vec<u64> = input["digits"].as_array().unwrap().iter().map(number).collect();
                assert_eq!(orderings(&digits), Some(number(&expected["count"])), "{}", case["id"]);
                seen[0] += 1;
            }
            "lock_codes" => {
                let repeats = match input["mode"].as_str().unwrap() {
                    "repeats" => Repeats::Any,
                    "no_repeats" => Repeats::Never,
                    _ => Repeats::Unordered,
                };
                let wheels = u32::try_from(number(&input["wheels"])).unwrap();
                let found = codes(wheels, number(&input["symbols"]), repeats);
                assert_eq!(found, Some(number(&expected["count"])), "{}", case["id"]);
                seen[1] += 1;
            }
            "expected_tries" => {
                let count = number(&input["equally_likely_codes"]);
                assert!(close(mean_tries(count), expected["mean_float"].as_f64().unwrap()), "{}", case["id"]);
                assert_eq!(number(&expected["worst"]), count);
                seen[2] += 1;
            }
            "chance_within" => {
                let found = chance_within(number(&input["equally_likely_codes"]), number(&input["tries"]));
                assert!(close(found, expected["p_float"].as_f64().unwrap()), "{}", case["id"]);
                seen[3] += 1;
            }
            _ => {}
        }
    }
    assert!(seen.iter().all(|count| *count >= 7), "{seen:?}");
}

/// Source: tests/refs/03_roman.json (PyPI roman 5.2, equal to a greedy converter for all of 1 to 3,999; exact).
#[test]
fn roman_numerals_are_read_strictly() {
    for case in cases(include_str!("refs/03_roman.json")) {
        let expected = case["valid"].as_bool().unwrap().then(|| u16::try_from(case["n"].as_u64().unwrap()).unwrap());
        assert_eq!(roman(case["roman"].as_str().unwrap()), expected, "{case}");
    }
}

/// Every code of a small lock, looked at one by one.
fn by_hand(kind: &LockKind, known: &Known) -> u64 {
    let wheels = kind.wheels().unwrap();
    let mut all = vec![String::new()];
    for wheel in 0..wheels {
        let symbols = inklatch::codes::symbols(kind, wheel);
        all = all.iter().flat_map(|code| symbols.iter().map(move |symbol| format!("{code}{symbol}"))).collect();
    }
    let fits = |code: &&String| {
        let count = |text: &[char], symbol| text.iter().filter(|found| **found == symbol).count();
        let code: Vec<char> = code.chars().collect();
        known.at.iter().all(|(at, symbol)| code.get(*at) == Some(symbol))
            && known.among.iter().all(|symbol| count(&code, *symbol) >= count(&known.among, *symbol))
    };
    all.iter().filter(fits).count() as u64
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig { cases: 120, ..Default::default() })]
    #[test]
    fn codes_left_are_counted_as_by_hand(
        digits in proptest::collection::vec(0_u8..10, 1..5),
        at in proptest::collection::vec(proptest::bool::ANY, 4),
        among in proptest::collection::vec(proptest::bool::ANY, 4),
        letters in proptest::bool::ANY,
    ) {
        let code: Vec<char> = digits.iter().map(|digit| if letters { char::from(b'A' + digit % 4) } else { char::from(b'0' + digit) }).collect();
        let kind = if letters {
            LockKind::Letters(code.iter().enumerate().map(|(wheel, _)| "ABCDE"[..4 + wheel % 2].to_owned()).collect())
        } else {
            LockKind::Digits(u8::try_from(code.len()).unwrap())
        };
        let mut known = Known::default();
        for (wheel, symbol) in code.iter().enumerate() {
            if at[wheel] {
                known.at.insert(wheel, *symbol);
            }
            if among[wheel] {
                known.among.push(*symbol);
            }
        }
        proptest::prop_assert_eq!(left(&kind, &known), Some(by_hand(&kind, &known)));
    }
}

/// The facts of common practice that the table shows (three wheels: 1,000, 6 orders, 10 for one wheel).
#[test]
fn a_lock_has_its_table() {
    let hints = ["Look at the shelf.", "The first digit is four.", "A seven, a one, a four."];
    let table = Left::new(&LockKind::Digits(3), "417", &hints).unwrap();
    assert_eq!((table.nothing, table.unordered, table.but_one), (1000, 6, 10));
    assert_eq!(table.steps, [1000, 100, 2]);
    assert!((minutes(1000) - 50.0).abs() < 1e-9);
    let pair = Left::new(&LockKind::Digits(4), "4471", &[]).unwrap();
    assert_eq!((pair.nothing, pair.unordered), (10_000, 12));
    // A wheel that lacks a letter rules orders out.
    let wheels = LockKind::Letters(vec!["AB".into(), "AB".into(), "BC".into()]);
    assert_eq!(Left::new(&wheels, "ABC", &[]).unwrap().unordered, 2);
    assert!(Left::new(&LockKind::Key, "the cup", &[]).is_none());
    assert!(Left::new(&LockKind::Digits(3), "41", &[]).is_none());
    assert!(left(&LockKind::Digits(200), &Known::default()).is_none(), "no lock has so many wheels");
}

#[test]
fn codes_that_people_try_first_are_known() {
    let digits = |code: &str| guess(&LockKind::Digits(u8::try_from(code.len()).unwrap()), code);
    for (code, found) in [
        ("000", Some(Guess::Same)),
        ("321", Some(Guess::Run)),
        ("3456", Some(Guess::Run)),
        ("1987", Some(Guess::Year)),
        ("3112", Some(Guess::Date)),
        ("007", Some(Guess::Film)),
        ("417", None),
        ("11", None),
    ] {
        assert_eq!(digits(code), found, "{code}");
    }
    assert_eq!(guess(&LockKind::Directions(4), "UUUU"), Some(Guess::Same));
    assert_eq!(as_set(&LockKind::Directions(4), " uldr "), "ULDR");
}
