//! Figures of straight bars, cut upright through the middle.

use serde::{Deserialize, Serialize};

/// A bar of a half figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bar {
    /// Half of the level bar at the top.
    Top,
    /// The upright in the upper part, at the edge that is farthest from the cut.
    Upper,
    /// Half of the level bar in the middle.
    Middle,
    /// The upright in the lower part.
    Lower,
    /// Half of the level bar at the foot.
    Foot,
}

use Bar::{Foot, Lower, Middle, Top, Upper};

/// All bars.
pub const BARS: [Bar; 5] = [Top, Upper, Middle, Lower, Foot];

/// The left and the right half of each digit.
const HALVES: [(&[Bar], &[Bar]); 10] = [
    (&[Top, Upper, Lower, Foot], &[Top, Upper, Lower, Foot]),
    (&[], &[Upper, Lower]),
    (&[Top, Middle, Lower, Foot], &[Top, Upper, Middle, Foot]),
    (&[Top, Middle, Foot], &BARS),
    (&[Upper, Middle], &[Upper, Middle, Lower]),
    (&[Top, Upper, Middle, Foot], &[Top, Middle, Lower, Foot]),
    (&BARS, &[Top, Middle, Lower, Foot]),
    (&[Top], &[Top, Upper, Lower]),
    (&BARS, &BARS),
    (&[Top, Upper, Middle, Foot], &BARS),
];

/// The halves of a digit.
#[must_use]
pub fn halves(digit: char) -> Option<(Vec<Bar>, Vec<Bar>)> {
    let (left, right) = HALVES.get(usize::try_from(digit.to_digit(10)?).ok()?)?;
    Some((left.to_vec(), right.to_vec()))
}

/// The digits that two halves side by side can be taken for. Uprights must be right. Of the level bars one may be
/// half as long as it should be, or half there where it should not: guests may see it or not.
#[must_use]
pub fn joined(left: &[Bar], right: &[Bar]) -> Vec<char> {
    let fits = |digit: &char| {
        let Some((l, r)) = halves(*digit) else { return false };
        let uprights = [Upper, Lower].iter();
        let off = |bar: &&Bar| {
            usize::from(left.contains(bar) != l.contains(bar)) + usize::from(right.contains(bar) != r.contains(bar))
        };
        uprights.clone().all(|bar| off(&bar) == 0)
            && [Top, Middle, Foot].iter().map(|bar| off(&bar)).sum::<usize>() <= 1
    };
    // Where one digit is met exactly, no other is seen in it.
    let exact = |digit: &char| halves(*digit).is_some_and(|(l, r)| same(left, &l) && same(right, &r));
    match ('0'..='9').find(exact) {
        Some(digit) => vec![digit],
        None => ('0'..='9').filter(fits).collect(),
    }
}

fn same(a: &[Bar], b: &[Bar]) -> bool {
    BARS.iter().all(|bar| a.contains(bar) == b.contains(bar))
}

/// Every half, by any choice of bars.
pub fn every_half() -> impl Iterator<Item = Vec<Bar>> {
    (0..1_usize << BARS.len())
        .map(|choice| BARS.iter().enumerate().filter(|(at, _)| choice >> at & 1 == 1).map(|(_, bar)| *bar).collect())
}
