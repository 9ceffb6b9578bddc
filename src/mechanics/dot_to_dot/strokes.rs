//! The digits, each in one stroke, and how like one another two lines are.
//!
//! Measures are a hundredth of a digit's breadth: a digit is 100 wide and 140 high. The shapes keep apart what is
//! easily taken for another: a 1 has a short steep flag and a 7 a whole bar, a 5 has corners where an S has none, and 6
//! and 9 are one shape turned over.

/// A point.
pub(super) type Point = (f64, f64);

/// A digit's breadth and height.
pub(super) const SIZE: Point = (100.0, 140.0);

/// A stroke in legs: each leg is smooth, and between two legs stands a corner. The legs hang together.
type Legs = &'static [&'static [Point]];

const STROKES: [Legs; 10] = [
    &[&[
        (58.0, 1.0),
        (36.0, 3.0),
        (14.0, 26.0),
        (5.0, 70.0),
        (14.0, 114.0),
        (36.0, 137.0),
        (64.0, 137.0),
        (86.0, 114.0),
        (95.0, 70.0),
        (89.0, 34.0),
        (78.0, 14.0),
    ]],
    &[&[(26.0, 30.0), (56.0, 0.0)], &[(56.0, 0.0), (56.0, 140.0)]],
    &[
        &[(8.0, 38.0), (18.0, 12.0), (48.0, 0.0), (80.0, 11.0), (91.0, 40.0), (80.0, 66.0), (46.0, 98.0), (6.0, 140.0)],
        &[(6.0, 140.0), (95.0, 140.0)],
    ],
    &[
        &[(8.0, 14.0), (42.0, 0.0), (76.0, 8.0), (88.0, 34.0), (74.0, 58.0), (44.0, 67.0)],
        &[(44.0, 67.0), (80.0, 76.0), (95.0, 104.0), (80.0, 132.0), (46.0, 140.0), (6.0, 124.0)],
    ],
    &[&[(70.0, 140.0), (70.0, 0.0)], &[(70.0, 0.0), (4.0, 98.0)], &[(4.0, 98.0), (98.0, 98.0)]],
    &[
        &[(88.0, 0.0), (20.0, 0.0)],
        &[(20.0, 0.0), (13.0, 64.0)],
        &[(13.0, 64.0), (48.0, 53.0), (82.0, 66.0), (95.0, 96.0), (80.0, 129.0), (44.0, 140.0), (5.0, 126.0)],
    ],
    &[&[
        (80.0, 4.0),
        (48.0, 18.0),
        (18.0, 54.0),
        (6.0, 96.0),
        (19.0, 128.0),
        (50.0, 140.0),
        (82.0, 127.0),
        (94.0, 97.0),
        (81.0, 69.0),
        (54.0, 60.0),
        (28.0, 72.0),
    ]],
    &[&[(4.0, 0.0), (96.0, 0.0)], &[(96.0, 0.0), (42.0, 140.0)]],
    &[&[
        (66.0, 2.0),
        (34.0, 2.0),
        (13.0, 20.0),
        (16.0, 46.0),
        (42.0, 62.0),
        (76.0, 80.0),
        (94.0, 108.0),
        (78.0, 134.0),
        (50.0, 140.0),
        (20.0, 133.0),
        (6.0, 108.0),
        (22.0, 82.0),
        (58.0, 62.0),
        (84.0, 46.0),
        (88.0, 22.0),
    ]],
    &[&[
        (20.0, 136.0),
        (52.0, 122.0),
        (82.0, 86.0),
        (94.0, 44.0),
        (81.0, 12.0),
        (50.0, 0.0),
        (18.0, 13.0),
        (6.0, 43.0),
        (19.0, 71.0),
        (46.0, 80.0),
        (72.0, 68.0),
    ]],
];

fn between(a: Point, b: Point, share: f64) -> Point {
    (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share)
}

/// From point to point.
pub(super) fn distance(a: Point, b: Point) -> f64 {
    let (dx, dy) = (a.0 - b.0, a.1 - b.1);
    (dx * dx + dy * dy).sqrt()
}

/// A smooth line through points, by Catmull and Rom's cubic (1974; from memory), as many short pieces.
fn smooth(points: &[Point]) -> Vec<Point> {
    const PIECES: u32 = 12;
    let Some(last) = points.len().checked_sub(1) else { return Vec::new() };
    let at = |index: usize| points.get(index.min(last)).copied().unwrap_or_default();
    let mut out = vec![at(0)];
    for index in 0..last {
        let (p0, p1, p2, p3) = (at(index.saturating_sub(1)), at(index), at(index + 1), at(index + 2));
        for piece in 1..=PIECES {
            let t = f64::from(piece) / f64::from(PIECES);
            let cubic = |a: f64, b: f64, c: f64, d: f64| {
                0.5 * (2.0 * b
                    + (c - a) * t
                    + (2.0 * a - 5.0 * b + 4.0 * c - d) * t * t
                    + (3.0 * b - a - 3.0 * c + d) * t * t * t)
            };
            out.push((cubic(p0.0, p1.0, p2.0, p3.0), cubic(p0.1, p1.1, p2.1, p3.1)));
        }
    }
    out
}

/// Points along a line, `count` equal pieces apart, both ends among them.
fn along(line: &[Point], count: usize) -> Vec<Point> {
    let length: f64 = line.windows(2).map(|pair| distance(pair[0], pair[1])).sum();
    let (Some(first), Some(last), true) = (line.first(), line.last(), count > 0) else { return Vec::new() };
    let step = length / count as f64;
    let (mut out, mut gone) = (vec![*first], 0.0);
    for pair in line.windows(2) {
        let piece = distance(pair[0], pair[1]);
        while out.len() < count && gone + piece >= step * out.len() as f64 {
            let share = if piece > 0.0 { (step * out.len() as f64 - gone) / piece } else { 0.0 };
            out.push(between(pair[0], pair[1], share));
        }
        gone += piece;
    }
    out.push(*last);
    out
}

/// Dots along a digit's stroke, about `spacing` apart, one at each corner.
pub(super) fn dots(digit: usize, spacing: f64) -> Vec<Point> {
    let mut out: Vec<Point> = Vec::new();
    for leg in STROKES.get(digit).copied().unwrap_or_default() {
        let line = smooth(leg);
        let length: f64 = line.windows(2).map(|pair| distance(pair[0], pair[1])).sum();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a digit is a few hundred long")]
        let count = (length / spacing.max(1.0)).round().max(1.0) as usize;
        out.extend(along(&line, count).into_iter().skip(usize::from(!out.is_empty())));
    }
    out
}

/// Points so near one another that a line is as good as all of its points.
const FINE: f64 = 4.0;
/// How far a line may stray from a digit and still be taken for it, for all but a tenth of its points.
const ALIKE: f64 = 11.0;

/// The digits for which a line of joined dots can be taken, wherever and however large it is drawn.
pub(super) fn shown(line: &[Point]) -> Vec<usize> {
    let mut fine: Vec<Point> = line
        .windows(2)
        .flat_map(|pair| {
            let pieces = (distance(pair[0], pair[1]) / FINE).ceil().clamp(1.0, 400.0);
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most 400")]
            let count = pieces as usize;
            (0..count).map(move |piece| between(pair[0], pair[1], piece as f64 / pieces))
        })
        .collect();
    fine.extend(line.last());
    let line = fitted(&fine);
    (0..STROKES.len())
        .filter(|digit| {
            let shape = fitted(&dots(*digit, FINE));
            !line.is_empty() && apart(&line, &shape) <= ALIKE && apart(&shape, &line) <= ALIKE
        })
        .collect()
}

/// The same points, moved and scaled so that they are as high as a digit and stand in the middle of one.
fn fitted(points: &[Point]) -> Vec<Point> {
    let (mut low, mut high) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
    for (x, y) in points {
        low = (low.0.min(*x), low.1.min(*y));
        high = (high.0.max(*x), high.1.max(*y));
    }
    let height = high.1 - low.1;
    // A flat line is no digit.
    if points.is_empty() || height < 1.0 {
        return Vec::new();
    }
    let scale = SIZE.1 / height;
    let left = (SIZE.0 - (high.0 - low.0) * scale) / 2.0;
    points.iter().map(|(x, y)| ((x - low.0) * scale + left, (y - low.1) * scale)).collect()
}

/// How far the points of one line are from the other, for all but the tenth that is farthest.
fn apart(from: &[Point], to: &[Point]) -> f64 {
    let nearest = |point: &Point| to.iter().map(|other| distance(*point, *other)).fold(f64::MAX, f64::min);
    let mut far: Vec<f64> = from.iter().map(nearest).collect();
    far.sort_by(f64::total_cmp);
    far.get(far.len().saturating_sub(1) * 9 / 10).copied().unwrap_or(f64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_digit_is_taken_for_itself_alone_however_many_dots_it_has() {
        for digit in 0..10 {
            for spacing in [4.0, 18.0, 22.0, 30.0, 40.0] {
                assert_eq!(shown(&dots(digit, spacing)), [digit], "{digit} at {spacing}");
            }
        }
    }

    #[test]
    fn six_and_nine_turn_into_each_other_and_nothing_else_does() {
        let turned = |digit| {
            let line: Vec<Point> = dots(digit, 20.0).into_iter().map(|(x, y)| (SIZE.0 - x, SIZE.1 - y)).collect();
            shown(&line)
        };
        assert_eq!((turned(6), turned(9)), (vec![9], vec![6]));
        assert_eq!((turned(0), turned(8)), (vec![0], vec![8]));
        for digit in [1, 2, 3, 4, 5, 7] {
            assert!(turned(digit).iter().all(|shown| *shown == digit), "{digit}: {:?}", turned(digit));
        }
        assert!(shown(&[(0.0, 0.0), (50.0, 0.0)]).is_empty() && shown(&[]).is_empty());
    }
}
