//! Ways through nets, against counts that others published.

use inklatch::readings::Budget;
use inklatch::readings::tokens::Spent;
use inklatch::readings::ways::Net;

/// A square of `side` by `side` points, each linked with its neighbours.
fn square(side: usize) -> Net {
    let mut net = Net::new(side * side);
    for row in 0..side {
        for col in 0..side {
            let at = row * side + col;
            if col + 1 < side {
                net.link(at, at + 1);
            }
            if row + 1 < side {
                net.link(at, at + side);
            }
        }
    }
    net
}

fn simple(net: &Net, from: usize, to: usize) -> Vec<Vec<usize>> {
    let mut all = Vec::new();
    net.each_simple(from, to, &mut Budget::new(u64::MAX), &mut |way| {
        all.push(way.to_vec());
        true
    })
    .unwrap();
    all
}

/// Source: OEIS A007764, self-avoiding walks from corner to corner of a square of points; exact.
#[test]
fn simple_ways_from_corner_to_corner_are_as_many_as_published() {
    for (side, published) in [(1, 1), (2, 2), (3, 12), (4, 184), (5, 8512)] {
        let ways = simple(&square(side), 0, side * side - 1);
        assert_eq!(ways.len(), published, "{side} by {side}");
        for way in &ways {
            let mut places = way.clone();
            places.sort_unstable();
            places.dedup();
            assert_eq!(places.len(), way.len(), "{way:?} comes to a place twice");
        }
        let mut distinct = ways.clone();
        distinct.sort();
        distinct.dedup();
        assert_eq!(distinct.len(), ways.len());
    }
}

/// Source: the central binomial coefficients C(2n, n), OEIS A000984: monotone lattice paths; exact.
#[test]
fn shortest_ways_from_corner_to_corner_are_as_many_as_published() {
    for (side, published) in [(1, 1), (2, 2), (3, 6), (4, 20), (5, 70), (6, 252)] {
        let mut count = 0;
        square(side)
            .each_shortest(0, side * side - 1, &mut Budget::default(), &mut |way| {
                assert_eq!(way.len(), 2 * side - 1);
                count += 1;
                true
            })
            .unwrap();
        assert_eq!(count, published, "{side} by {side}");
    }
}

#[test]
fn distances_count_links_and_know_no_way() {
    let mut net = Net::new(5);
    for (a, b) in [(0, 1), (1, 2), (0, 3), (3, 2), (2, 2), (7, 1), (0, 1)] {
        net.link(a, b);
    }
    assert_eq!(net.distances(0), [Some(0), Some(1), Some(2), Some(1), None]);
    assert_eq!(net.from(0), [1, 3], "a link is held once");
    assert_eq!(net.distances_without(0, &[false, true, false, true]), [Some(0), None, None, None, None]);
    assert!(net.distances(9).iter().all(Option::is_none));
    assert!(simple(&net, 0, 4).is_empty() && simple(&net, 0, 9).is_empty());
    assert_eq!(simple(&net, 2, 2), [[2]]);
}

#[test]
fn a_spent_budget_is_said_and_a_full_cup_stops() {
    let net = square(8);
    assert_eq!(net.each_simple(0, 63, &mut Budget::new(20_000), &mut |_| true), Err(Spent));
    let mut seen = 0;
    let stop = net.each_simple(0, 63, &mut Budget::default(), &mut |_| {
        seen += 1;
        seen < 5
    });
    assert_eq!((stop, seen), (Ok(()), 5));
}
