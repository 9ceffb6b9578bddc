/// The box about a path, in its own units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Extent {
    x: (f64, f64),
    y: (f64, f64),
}

impl Extent {
    /// The box about path data; curves by their control points.
    pub(super) fn of(data: &str) -> Self {
        let mut extent = Self { x: (f64::MAX, f64::MIN), y: (f64::MAX, f64::MIN) };
        for (x, y) in parts(data).into_iter().flat_map(|part| part.points) {
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
    let broad: Vec<&str> = parts(data).iter().filter(|part| breadth(&part.points) > width).map(|part| part.data).collect();
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
    fn a_line_is_thin_and_a_square_is_not() {
        let line = "M 0 0 L 20 0 L 20 0.5 L 0 0.5 Z";
        let square = "M 0 0 L 5 0 L 5 5 L 0 5 Z";
        assert_eq!(wide(line, 1.0), "");
        assert_eq!(wide(&format!("{line} {square}"), 1.0), square);
    }
}
