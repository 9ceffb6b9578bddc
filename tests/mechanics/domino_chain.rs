use inklatch::kit::LockKind;
use inklatch::mechanics::find;
use inklatch::readings::{Budget, Readings, Verdict};
use serde_json::json;

use crate::common::{dressed, lay_out};

fn read(pieces: &[(u8, u8)], first: Option<usize>) -> Readings {
    let view = json!({ "card_text": "", "pieces": pieces, "first": first });
    let wheels = u8::try_from(pieces.len().saturating_sub(1)).unwrap();
    find("domino-chain").unwrap().view(&view).unwrap().readings(&LockKind::Digits(wheels), &mut Budget::default())
}

fn answers(readings: &Readings) -> Vec<&str> {
    readings.list.iter().map(|reading| reading.answer.as_str()).collect()
}

#[test]
fn joins_are_read_from_the_marked_piece_on() {
    let found = read(&[(8, 5), (0, 5), (2, 8), (2, 9)], Some(1));
    assert_eq!(answers(&found), ["582"]);
    assert_eq!(found.list[0].why, "from the piece 0|5, the pieces touch at 5, 8, 2");
    assert!(found.remarks.is_empty(), "{found:?}");
}

#[test]
fn without_a_first_piece_the_row_reads_both_ways() {
    let found = read(&[(8, 5), (0, 5), (2, 8), (2, 9)], None);
    assert_eq!(answers(&found), ["285", "582"]);
    assert!(!found.remarks.is_empty());
}

#[test]
fn a_second_chain_reads_as_well() {
    // The double may lie at either 5.
    let found = read(&[(0, 5), (5, 5), (5, 7), (7, 5), (5, 9)], Some(0));
    assert_eq!(answers(&found), ["5575", "5755"]);
    let mechanic = find("domino-chain").unwrap();
    let trouble = lay_out(mechanic, "()", "5575", &LockKind::Digits(4), 1).err().unwrap();
    assert!(trouble.message.contains("5755") && trouble.hints.iter().any(|hint| hint.contains("Light")), "{trouble}");
    // With arrows the double lies at either 5 all the same, while what lies between two of a digit cannot be turned.
    assert!(lay_out(mechanic, "(work: Light)", "5575", &LockKind::Digits(4), 1).is_err());
    for answer in ["12314", "3123", "98769"] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        let view = lay_out(mechanic, "(work: Light)", answer, &lock, 1).unwrap();
        assert_eq!(view.readings(&lock, &mut Budget::default()).verdict(answer), Verdict::One);
    }
    assert!(lay_out(mechanic, "()", "12314", &LockKind::Digits(5), 1).is_err());
}

#[test]
fn pieces_that_do_not_chain_have_no_reading() {
    let found = read(&[(0, 5), (5, 6), (7, 8)], Some(0));
    assert!(found.list.is_empty() && found.remarks == ["no row uses all pieces"], "{found:?}");
    assert!(!read(&[(0, 5), (5, 6)], Some(9)).remarks.is_empty());
    assert_eq!(read(&[(1, 1); 40], Some(0)).verdict("1"), Verdict::Unproven);
}

#[test]
fn answers_with_a_digit_twice_are_carried_where_the_chain_allows_it() {
    let mechanic = find("domino-chain").unwrap();
    for answer in ["575", "557", "00", "1234567", "909", "00000000000"] {
        let lock = LockKind::Digits(u8::try_from(answer.len()).unwrap());
        for seed in 0..5 {
            let view = lay_out(mechanic, "(card_text: \"From *tea* time.\")", answer, &lock, seed).unwrap();
            let found = view.readings(&lock, &mut Budget::default());
            assert_eq!(found.verdict(answer), Verdict::One, "{answer}: {found:?}");
            assert!(dressed("domino-chain", &lock, |cx| view.pieces(cx)).is_ok());
        }
    }
    let letters = LockKind::Letters(vec!["AB".into(), "AB".into()]);
    assert!(lay_out(mechanic, "()", "AB", &letters, 1).is_err(), "it gives digits");
}
