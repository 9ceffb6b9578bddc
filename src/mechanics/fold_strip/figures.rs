//! Figures of straight bars, cut level through the middle.

use serde::{Deserialize, Serialize};

/// A bar of a half figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bar {
    /// Along the edge that is farthest from the cut.
    Outer,
    /// Upright at the left.
    Left,
    /// Upright at the right.
    Right,
    /// Along the cut: one half, as thick as half a bar, of the bar in the middle.
    Cut,
}

/// A stroke on the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Stroke {
    /// Upright at the left.
    Left,
    /// Upright at the right.
    Right,
    /// From the upper left to the lower right.
    Falling,
    /// From the lower left to the upper right.
    Rising,
}

/// All strokes.
pub const STROKES: [Stroke; 4] = [Stroke::Left, Stroke::Right, Stroke::Falling, Stroke::Rising];

use Bar::{Cut, Left, Outer, Right};

/// All bars.
pub const BARS: [Bar; 4] = [Outer, Left, Right, Cut];

/// The upper and the lower half of each digit.
const HALVES: [(&[Bar], &[Bar]); 10] = [
    (&[Outer, Left, Right], &[Outer, Left, Right]),
    (&[Right], &[Right]),
    (&[Outer, Right, Cut], &[Outer, Left, Cut]),
    (&[Outer, Right, Cut], &[Outer, Right, Cut]),
    (&[Left, Right, Cut], &[Right, Cut]),
    (&[Outer, Left, Cut], &[Outer, Right, Cut]),
    (&[Outer, Left, Cut], &[Outer, Left, Right, Cut]),
    (&[Outer, Right], &[Right]),
    (&[Outer, Left, Right, Cut], &[Outer, Left, Right, Cut]),
    (&[Outer, Left, Right, Cut], &[Outer, Right, Cut]),
];

/// The halves of a digit.
#[must_use]
pub fn halves(digit: char) -> Option<(Vec<Bar>, Vec<Bar>)> {
    let (upper, lower) = HALVES.get(usize::try_from(digit.to_digit(10)?).ok()?)?;
    Some((upper.to_vec(), lower.to_vec()))
}

/// The digits that two halves make when they meet. A bar along the cut that only one half has is thin: guests may
/// see it or not.
#[must_use]
pub fn joined(upper: &[Bar], lower: &[Bar]) -> Vec<char> {
    let half = |bars: &[Bar], bar: Bar| bars.contains(&bar);
    let thin = half(upper, Cut) != half(lower, Cut);
    ('0'..='9')
        .filter(|digit| {
            halves(*digit).is_some_and(|(top, foot)| {
                let outside = [Outer, Left, Right]
                    .iter()
                    .all(|bar| half(upper, *bar) == half(&top, *bar) && half(lower, *bar) == half(&foot, *bar));
                outside && (thin || half(upper, Cut) == half(&top, Cut))
            })
        })
        .collect()
}

/// The digit that a half is by itself, low as it is: a box, an upright, an upright under a level bar.
#[must_use]
pub fn squat(bars: &[Bar], level: Bar) -> Option<char> {
    let mut bars = bars.to_vec();
    bars.sort_unstable();
    bars.dedup();
    match bars.as_slice() {
        [Outer, Left, Right, Cut] => Some('0'),
        [Left] | [Right] => Some('1'),
        [bar, Right] | [Right, bar] if *bar == level => Some('7'),
        _ => None,
    }
}

/// Every choice of strokes for a band.
pub fn bands() -> impl Iterator<Item = Vec<Stroke>> {
    (0..1_usize << STROKES.len())
        .map(|choice| STROKES.iter().enumerate().filter(|(at, _)| choice >> at & 1 == 1).map(|(_, s)| *s).collect())
}
