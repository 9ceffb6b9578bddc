/// An affine map, as the SVG library writes it: `matrix(a b c d e f)`.
#[derive(Clone, Copy, Debug)]
pub(super) struct Map([f64; 6]);

impl Map {
    /// The map that leaves all where it is.
    pub(super) const NONE: Self = Self([1.0, 0.0, 0.0, 1.0, 0.0, 0.0]);

    /// This map after an inner one; what is no matrix counts as none.
    pub(super) fn then(self, inner: &str) -> Self {
        let inside = inner.trim().strip_prefix("matrix(").and_then(|rest| rest.strip_suffix(')'));
        let numbers: Vec<f64> = inside.unwrap_or_default().split([' ', ',']).filter_map(|n| n.parse().ok()).collect();
        let Ok([a, b, c, d, e, f]) = <[f64; 6]>::try_from(numbers) else { return self };
        let (x, y) = (self.turn(a, b), self.turn(c, d));
        let at = self.at((e, f));
        Self([x.0, x.1, y.0, y.1, at.0, at.1])
    }

    fn turn(self, x: f64, y: f64) -> (f64, f64) {
        let [a, b, c, d, ..] = self.0;
        (a * x + c * y, b * x + d * y)
    }

    fn at(self, (x, y): (f64, f64)) -> (f64, f64) {
        let (tx, ty) = self.turn(x, y);
        (tx + self.0[4], ty + self.0[5])
    }

    /// By how much lengths grow; never nothing.
    pub(super) fn scale(self) -> f64 {
        let [a, b, c, d, ..] = self.0;
        let scale = (a * d - b * c).abs().sqrt();
        if scale.is_finite() && scale > 1e-9 { scale } else { 1.0 }
    }
}

/// The box about a path on the picture.
#[derive(Clone, Copy, Debug)]
pub(super) struct Extent {
    x: (f64, f64),
    y: (f64, f64),
}

impl Extent {
    /// The box about path data at its place; curves by their control points.
    pub(super) fn of(data: &str, map: Map) -> Self {
        let mut extent = Self { x: (f64::MAX, f64::MIN), y: (f64::MAX, f64::MIN) };
        for (x, y) in parts(data).into_iter().flat_map(|part| part.points).map(|point| map.at(point)) {
            extent.x = (extent.x.0.min(x), extent.x.1.max(x));
            extent.y = (extent.y.0.min(y), extent.y.1.max(y));
        }
        extent
    }

    /// Whether two boxes share an area.
    pub(super) fn meets(&self, other: &Self) -> bool {
        self.x.0 < other.x.1 && other.x.0 < self.x.1 && self.y.0 < other.y.1 && other.y.0 < self.y.1
    }
}

/// One closed line of a path: its data, and its points.
struct Part<'a> {
    data: &'a str,
    points: Vec<(f64, f64)>,
}

/// The parts of path data that are wider than `width` in the mean, as path data; empty when all are lines.
///
/// Twice the area by the length around is the width of a line; of a disc it is the radius.
pub(super) fn wide(data: &str, width: f64) -> String {
    let broad: Vec<&str> =
        parts(data).iter().filter(|part| breadth(&part.points) > width).map(|part| part.data).collect();
    broad.join(" ")
}

fn breadth(points: &[(f64, f64)]) -> f64 {
    let next = points.iter().cycle().skip(1);
    let (mut area, mut around) = (0.0, 0.0);
    for (a, b) in points.iter().zip(next) {
        area += a.0 * b.1 - b.0 * a.1;
        around += (b.0 - a.0).hypot(b.1 - a.1);
    }
    if around > 0.0 { area.abs() / around } else { 0.0 }
}

/// The closed lines of path data as the SVG library writes it: absolute commands, numbers parted by spaces.
fn parts(data: &str) -> Vec<Part<'_>> {
    let mut starts: Vec<usize> = data.match_indices('M').map(|(at, _)| at).collect();
    starts.push(data.len());
    let mut found = Vec::new();
    for (from, to) in starts.iter().zip(starts.iter().skip(1)) {
        let text = data.get(*from..*to).unwrap_or_default();
        let numbers: Vec<f64> = text
            .split(|c: char| c.is_ascii_alphabetic() && c != 'e' || c.is_whitespace() || c == ',')
            .filter_map(|number| number.parse().ok())
            .collect();
        let points = numbers.as_chunks::<2>().0.iter().map(|[x, y]| (*x, *y)).collect();
        found.push(Part { data: text.trim(), points });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn maps_follow_one_another() {
        let map = Map::NONE.then("matrix(2 0 0 2 10 0)").then("matrix(1 0 0 1 3 4)");
        assert_eq!(map.at((1.0, 1.0)), (18.0, 10.0));
        assert!((map.scale() - 2.0).abs() < 1e-12);
    }

    #[test]
    fn a_line_is_thin_and_a_square_is_not() {
        let line = "M 0 0 L 20 0 L 20 0.5 L 0 0.5 Z";
        let square = "M 0 0 L 5 0 L 5 5 L 0 5 Z";
        assert_eq!(wide(line, 1.0), "");
        assert_eq!(wide(&format!("{line} {square}"), 1.0), square);
    }
}
