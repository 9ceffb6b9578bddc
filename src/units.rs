//! Lengths and places on paper as types, so that a millimetre never meets a point by accident.
//!
//! All lengths are finite by construction: a value that is not a number becomes zero at the door
//! ([`Mm::new`], [`Pt::new`]), so later code need not ask.

use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

use serde::{Deserialize, Serialize};

/// Points in one inch (the desktop-publishing point: 72 to the inch).
pub const PT_PER_INCH: f64 = 72.0;
/// Millimetres in one inch, exact by the international definition of 1959.
pub const MM_PER_INCH: f64 = 25.4;

macro_rules! length {
    ($name:ident, $doc:literal) => {
        #[doc = $doc]
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(from = "f64", into = "f64")]
        pub struct $name(f64);

        impl $name {
            /// No length.
            pub const ZERO: Self = Self(0.0);

            /// A length; anything that is not finite becomes zero.
            #[must_use]
            pub const fn new(value: f64) -> Self {
                if value.is_finite() { Self(value) } else { Self(0.0) }
            }

            /// The bare number.
            #[must_use]
            pub const fn get(self) -> f64 {
                self.0
            }

            /// The smaller of two lengths.
            #[must_use]
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of two lengths.
            #[must_use]
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
        }

        impl From<f64> for $name {
            fn from(value: f64) -> Self {
                Self::new(value)
            }
        }
        impl From<$name> for f64 {
            fn from(value: $name) -> Self {
                value.0
            }
        }
        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self::new(self.0 * factor)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self::new(self.0 / divisor)
            }
        }
    };
}

length!(Mm, "A length in millimetres.");
length!(Pt, "A length in points, 72 to the inch; used for type sizes.");

impl Mm {
    /// The same length in points.
    #[must_use]
    pub fn to_pt(self) -> Pt {
        Pt::new(self.0 / MM_PER_INCH * PT_PER_INCH)
    }
}

impl Pt {
    /// The same length in millimetres.
    #[must_use]
    pub fn to_mm(self) -> Mm {
        Mm::new(self.0 / PT_PER_INCH * MM_PER_INCH)
    }
}

/// Width and height in millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Size {
    /// Width.
    pub w: Mm,
    /// Height.
    pub h: Mm,
}

impl Size {
    /// A size from bare millimetres.
    #[must_use]
    pub const fn mm(w: f64, h: f64) -> Self {
        Self { w: Mm::new(w), h: Mm::new(h) }
    }
}

/// An axis-aligned rectangle in millimetres; `x` grows to the right and `y` down, from the top left.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Rect {
    /// Left edge.
    pub x: Mm,
    /// Top edge.
    pub y: Mm,
    /// Width.
    pub w: Mm,
    /// Height.
    pub h: Mm,
}

impl Rect {
    /// A rectangle from bare millimetres.
    #[must_use]
    pub const fn mm(x: f64, y: f64, w: f64, h: f64) -> Self {
        Self { x: Mm::new(x), y: Mm::new(y), w: Mm::new(w), h: Mm::new(h) }
    }

    /// The rectangle of this size at the origin.
    #[must_use]
    pub const fn of(size: Size) -> Self {
        Self { x: Mm::ZERO, y: Mm::ZERO, w: size.w, h: size.h }
    }

    /// Right edge.
    #[must_use]
    pub fn right(self) -> Mm {
        self.x + self.w
    }

    /// Bottom edge.
    #[must_use]
    pub fn bottom(self) -> Mm {
        self.y + self.h
    }

    /// The same rectangle, drawn in by `by` on every side.
    #[must_use]
    pub fn inset(self, by: Mm) -> Self {
        Self { x: self.x + by, y: self.y + by, w: self.w - by * 2.0, h: self.h - by * 2.0 }
    }

    /// Moved by `dx`, `dy`.
    #[must_use]
    pub fn moved(self, dx: Mm, dy: Mm) -> Self {
        Self { x: self.x + dx, y: self.y + dy, ..self }
    }

    /// Whether `other` lies wholly inside, give or take a hundredth of a millimetre.
    #[must_use]
    pub fn holds(self, other: Self) -> bool {
        const SLACK: f64 = 0.01;
        other.x.get() >= self.x.get() - SLACK
            && other.y.get() >= self.y.get() - SLACK
            && other.right().get() <= self.right().get() + SLACK
            && other.bottom().get() <= self.bottom().get() + SLACK
    }

    /// Whether the two share an area of more than a line.
    #[must_use]
    pub fn meets(self, other: Self) -> bool {
        self.x < other.right() && other.x < self.right() && self.y < other.bottom() && other.y < self.bottom()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_is_72_points() {
        assert!((Mm::new(MM_PER_INCH).to_pt().get() - PT_PER_INCH).abs() < 1e-12);
    }

    #[test]
    fn what_is_no_number_becomes_zero() {
        assert_eq!(Mm::new(f64::NAN), Mm::ZERO);
        assert_eq!(Pt::new(f64::INFINITY), Pt::ZERO);
        assert_eq!(Mm::new(1.0) / 0.0, Mm::ZERO);
    }
}
