//! Colours in sRGB, as 8-bit values; how other eyes see them; how far apart they are.

mod cvd;
mod lab;

use std::fmt;

use serde::{Deserialize, Serialize};

pub use cvd::{Eyes, Lens};
pub use lab::{Lab, difference};

/// A colour in sRGB.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Colour {
    /// Red, 0 to 255.
    pub r: u8,
    /// Green.
    pub g: u8,
    /// Blue.
    pub b: u8,
}

impl Colour {
    /// Black.
    pub const BLACK: Self = Self { r: 0, g: 0, b: 0 };
    /// White.
    pub const WHITE: Self = Self { r: 255, g: 255, b: 255 };

    /// Reads `#RRGGBB`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let hex = text.trim().strip_prefix('#')?;
        if hex.len() != 6 || !hex.is_ascii() {
            return None;
        }
        let part = |at: usize| u8::from_str_radix(hex.get(at..at + 2)?, 16).ok();
        Some(Self { r: part(0)?, g: part(2)?, b: part(4)? })
    }

    /// The colour as a guest sees it on a grey print: the same luminance, no hue (Rec. 709 weights on the
    /// linear values, as in WCAG 2.2's relative luminance).
    #[must_use]
    pub fn grey(self) -> Self {
        let v = encode(self.luminance());
        Self { r: v, g: v, b: v }
    }

    /// Relative luminance, 0 to 1, as WCAG 2.2 defines it.
    #[must_use]
    pub fn luminance(self) -> f64 {
        0.2126 * linear(self.r) + 0.7152 * linear(self.g) + 0.0722 * linear(self.b)
    }

    /// Contrast ratio to another colour, 1 to 21, as WCAG 2.2 defines it.
    #[must_use]
    pub fn contrast(self, other: Self) -> f64 {
        let (a, b) = (self.luminance(), other.luminance());
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// The colour as it looks on white paper when it is drawn with this opacity, 0 to 1.
    #[must_use]
    pub fn on_white(self, opacity: f64) -> Self {
        let opacity = opacity.clamp(0.0, 1.0);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and 255")]
        let mixed = |part: u8| (f64::from(part) * opacity + 255.0 * (1.0 - opacity)).round() as u8;
        Self { r: mixed(self.r), g: mixed(self.g), b: mixed(self.b) }
    }

    /// The linear-light values, red, green, blue, each 0 to 1.
    #[must_use]
    pub fn linear(self) -> [f64; 3] {
        [linear(self.r), linear(self.g), linear(self.b)]
    }

    /// A colour from linear-light values; values outside 0 to 1 are clipped.
    #[must_use]
    pub fn from_linear(rgb: [f64; 3]) -> Self {
        let [r, g, b] = rgb.map(encode);
        Self { r, g, b }
    }
}

/// sRGB's transfer function to linear light (IEC 61966-2-1: 0.04045, 12.92, 0.055, 2.4).
fn linear(value: u8) -> f64 {
    let v = f64::from(value) / 255.0;
    if v <= 0.04045 { v / 12.92 } else { ((v + 0.055) / 1.055).powf(2.4) }
}

/// sRGB's transfer function from linear light (IEC 61966-2-1), rounded to 8 bits.
fn encode(value: f64) -> u8 {
    let v = value.clamp(0.0, 1.0);
    let v = if v <= 0.003_130_8 { v * 12.92 } else { 1.055 * v.powf(1.0 / 2.4) - 0.055 };
    // In range by the clamp above.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to 0..=255")]
    let byte = (v * 255.0).round() as u8;
    byte
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:02X}{:02X}{:02X}", self.r, self.g, self.b)
    }
}

impl Serialize for Colour {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Colour {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::parse(&text).ok_or_else(|| {
            serde::de::Error::custom(format!("\"{text}\" is no colour: write six hex digits, as in #1F2A44"))
        })
    }
}
