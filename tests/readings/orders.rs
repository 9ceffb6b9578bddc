//! The search for orders, against counts that are known exactly.

use inklatch::readings::Budget;
use inklatch::readings::orders::{Orders, Step};

fn count<S: Ord + Clone>(orders: &Orders<'_, S>, start: &S) -> usize {
    let mut count = 0;
    let each = orders.each(start, &mut Budget::default(), &mut |laid, _| {
        assert_eq!(laid.len(), orders.pieces);
        count += 1;
        true
    });
    each.unwrap();
    count
}

#[test]
fn all_orders_and_turns_of_free_pieces() {
    let next = |(): &(), _: Step| Some(());
    for (pieces, ways, wanted) in [(0, 1, 1), (4, 1, 24), (6, 1, 720), (3, 2, 6 * 8), (4, 3, 24 * 81)] {
        let orders = Orders { pieces, ways, next: &next, alike: &|_, _| false };
        assert_eq!(count(&orders, &()), wanted);
    }
}

#[test]
fn pieces_that_look_alike_count_once() {
    // The letters of MISSISSIPPI: 11! / (4! 4! 2!) arrangements.
    let word: Vec<char> = "MISSISSIPPI".chars().collect();
    let next = |(): &(), _: Step| Some(());
    let alike = |a: Step, b: Step| word[a.0] == word[b.0];
    assert_eq!(count(&Orders { pieces: word.len(), ways: 1, next: &next, alike: &alike }, &()), 34_650);
}

/// Queens that do not attack one another on boards of 1 to 8 rows: OEIS A000170.
#[test]
fn queens_on_a_board() {
    for (size, wanted) in [(1, 1), (2, 0), (3, 0), (4, 2), (5, 10), (6, 4), (7, 40), (8, 92)] {
        let next = |placed: &Vec<usize>, (col, _): Step| {
            let row = placed.len();
            let safe = placed.iter().enumerate().all(|(at, other)| row - at != col.abs_diff(*other));
            safe.then(|| placed.iter().copied().chain([col]).collect::<Vec<_>>())
        };
        let orders = Orders { pieces: size, ways: 1, next: &next, alike: &|_, _| false };
        assert_eq!(count(&orders, &Vec::new()), wanted, "{size}");
    }
}

#[test]
fn ends_are_met_once_each() {
    // A sum has one end however the numbers are laid; turned pieces count against it: 1 + 2 + 4 gives eight sums.
    let numbers = [1_i32, 2, 4];
    let next = |sum: &i32, (piece, way): Step| Some(if way == 0 { sum + numbers[piece] } else { sum - numbers[piece] });
    let orders = Orders { pieces: 3, ways: 2, next: &next, alike: &|_, _| false };
    let mut ends = Vec::new();
    orders
        .each_end(&0, &mut Budget::default(), &mut |laid, sum| {
            assert_eq!(laid.len(), 3);
            ends.push(*sum);
            true
        })
        .unwrap();
    ends.sort_unstable();
    assert_eq!(ends, [-7, -5, -3, -1, 1, 3, 5, 7]);
    assert_eq!(count(&orders, &0), 6 * 8);
}

#[test]
fn a_search_stops_when_it_is_told_or_out_of_budget_or_out_of_measure() {
    let next = |(): &(), _: Step| Some(());
    let orders = |pieces| Orders { pieces, ways: 1, next: &next, alike: &|_, _| false };
    let mut seen = 0;
    let done = orders(5).each(&(), &mut Budget::default(), &mut |_, ()| {
        seen += 1;
        seen < 3
    });
    assert!(done.is_ok() && seen == 3);
    assert!(orders(5).each(&(), &mut Budget::new(10), &mut |_, ()| true).is_err());
    assert!(orders(17).each(&(), &mut Budget::default(), &mut |_, ()| true).is_err());
}
