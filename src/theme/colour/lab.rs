//! CIELAB and the CIEDE2000 colour difference.

use super::Colour;

/// A colour in CIELAB under D65: lightness 0 to 100, green to red, blue to yellow.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// Lightness.
    pub l: f64,
    /// Green (negative) to red.
    pub a: f64,
    /// Blue (negative) to yellow.
    pub b: f64,
}

/// XYZ of the D65 white, 2-degree observer (x = 0.3127, y = 0.3290), with Y = 1.
const WHITE: [f64; 3] = [0.950_456, 1.0, 1.089_058];

impl Colour {
    /// The colour in CIELAB (IEC 61966-2-1 primaries; CIE 1976 L*a*b*; D65).
    #[must_use]
    pub fn lab(self) -> Lab {
        let [r, g, b] = self.linear();
        let xyz = [
            0.412_456_4 * r + 0.357_576_1 * g + 0.180_437_5 * b,
            0.212_672_9 * r + 0.715_152_2 * g + 0.072_175_0 * b,
            0.019_333_9 * r + 0.119_192_0 * g + 0.950_304_1 * b,
        ];
        let f = |value: f64, white: f64| {
            let t = value / white;
            // (6/29)^3 and its slope, CIE 15.
            if t > 216.0 / 24389.0 { t.cbrt() } else { (24389.0 / 27.0 * t + 16.0) / 116.0 }
        };
        let [x, y, z] = [f(xyz[0], WHITE[0]), f(xyz[1], WHITE[1]), f(xyz[2], WHITE[2])];
        Lab { l: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }
}

/// The CIEDE2000 difference with all weights 1: G. Sharma, W. Wu, E. N. Dalal, Color Research and Application
/// 30(1), 2005, equations 2 to 22.
#[must_use]
pub fn difference(one: Lab, two: Lab) -> f64 {
    let (chroma1, chroma2) = (one.a.hypot(one.b), two.a.hypot(two.b));
    let g = 0.5 * (1.0 - seventh(f64::midpoint(chroma1, chroma2)));
    let (a1, a2) = ((1.0 + g) * one.a, (1.0 + g) * two.a);
    let (c1, c2) = (a1.hypot(one.b), a2.hypot(two.b));
    let (h1, h2) = (hue(a1, one.b), hue(a2, two.b));
    let grey = c1 * c2 == 0.0;

    let turn = if grey {
        0.0
    } else if (h2 - h1).abs() <= 180.0 {
        h2 - h1
    } else if h2 > h1 {
        h2 - h1 - 360.0
    } else {
        h2 - h1 + 360.0
    };
    let (dl, dc) = (two.l - one.l, c2 - c1);
    let dh = 2.0 * (c1 * c2).sqrt() * (turn / 2.0).to_radians().sin();

    let (l, c) = (f64::midpoint(one.l, two.l), f64::midpoint(c1, c2));
    let h = if grey {
        h1 + h2
    } else if (h1 - h2).abs() <= 180.0 {
        f64::midpoint(h1, h2)
    } else if h1 + h2 < 360.0 {
        (h1 + h2 + 360.0) / 2.0
    } else {
        (h1 + h2 - 360.0) / 2.0
    };
    let cos = |degrees: f64| degrees.to_radians().cos();
    let t = 1.0 - 0.17 * cos(h - 30.0) + 0.24 * cos(2.0 * h) + 0.32 * cos(3.0 * h + 6.0) - 0.20 * cos(4.0 * h - 63.0);
    let bow = (l - 50.0).powi(2);
    let sl = 1.0 + 0.015 * bow / (20.0 + bow).sqrt();
    let sc = 1.0 + 0.045 * c;
    let sh = 1.0 + 0.015 * c * t;
    let angle = 30.0 * (-((h - 275.0) / 25.0).powi(2)).exp();
    let rt = -(2.0 * angle).to_radians().sin() * 2.0 * seventh(c);
    let (tl, tc, th) = (dl / sl, dc / sc, dh / sh);
    (tl * tl + tc * tc + th * th + rt * tc * th).max(0.0).sqrt()
}

/// The root of c⁷ / (c⁷ + 25⁷).
fn seventh(c: f64) -> f64 {
    let c7 = c.powi(7);
    (c7 / (c7 + 25.0_f64.powi(7))).sqrt()
}

/// The hue angle, 0 to 360 degrees; 0 for grey.
fn hue(a: f64, b: f64) -> f64 {
    if a == 0.0 && b == 0.0 { 0.0 } else { b.atan2(a).to_degrees().rem_euclid(360.0) }
}
