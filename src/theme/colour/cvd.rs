//! How other eyes, and a grey printer, see a colour.

use super::{Colour, difference, encode};

/// Who looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Eyes {
    /// Full colour vision.
    Full,
    /// No red-sensitive cones (protanopia).
    Protan,
    /// No green-sensitive cones (deuteranopia).
    Deutan,
    /// No blue-sensitive cones (tritanopia).
    Tritan,
    /// Any eyes on a grey print or in poor light.
    Grey,
}

type Matrix = [[f64; 3]; 3];

// G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision
// Deficiency", IEEE TVCG 15(6), 2009: matrices for severity 1.0, from the authors' supplementary page. They act on
// linear light.
const PROTAN: Matrix =
    [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]];
const DEUTAN: Matrix = [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]];
const TRITAN: Matrix =
    [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]];

impl Eyes {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Full, Self::Protan, Self::Deutan, Self::Tritan, Self::Grey];

    /// A name for a list: "Protan".
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Full => "Full colour",
            Self::Protan => "Protan",
            Self::Deutan => "Deutan",
            Self::Tritan => "Tritan",
            Self::Grey => "Grey",
        }
    }

    /// In words: "to eyes with deuteranopia".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Full => "to full colour vision",
            Self::Protan => "to eyes with protanopia",
            Self::Deutan => "to eyes with deuteranopia",
            Self::Tritan => "to eyes with tritanopia",
            Self::Grey => "on a grey print or in poor light",
        }
    }

    /// The colour as these eyes see it.
    #[must_use]
    pub fn see(self, colour: Colour) -> Colour {
        let matrix = match self {
            Self::Full => return colour,
            Self::Grey => return colour.grey(),
            Self::Protan => PROTAN,
            Self::Deutan => DEUTAN,
            Self::Tritan => TRITAN,
        };
        let light = colour.linear();
        let [r, g, b] = matrix.map(|row| encode(row.iter().zip(light).map(|(m, v)| m * v).sum()));
        Colour { r, g, b }
    }

    /// How far apart two colours are to these eyes (CIEDE2000).
    #[must_use]
    pub fn difference(self, a: Colour, b: Colour) -> f64 {
        difference(self.see(a).lab(), self.see(b).lab())
    }
}

/// Steps of the way back from linear light, fine enough that every 8-bit value is reached.
const STEPS: usize = 1 << 14;

/// Many colours as some eyes see them, quickly: for pictures. It may differ from [`Eyes::see`] by one step of 255.
#[derive(Clone, Debug)]
pub struct Lens {
    eyes: Eyes,
    light: Vec<f64>,
    back: Vec<u8>,
}

impl Lens {
    /// The lens of these eyes.
    #[must_use]
    pub fn new(eyes: Eyes) -> Self {
        let light = (0..=u8::MAX).map(super::linear).collect();
        #[expect(clippy::cast_precision_loss, reason = "a few thousand steps")]
        let back = (0..=STEPS).map(|step| encode(step as f64 / STEPS as f64)).collect();
        Self { eyes, light, back }
    }

    /// The colour as these eyes see it.
    #[must_use]
    pub fn see(&self, colour: Colour) -> Colour {
        let matrix = match self.eyes {
            Eyes::Full => return colour,
            Eyes::Protan => PROTAN,
            Eyes::Deutan => DEUTAN,
            Eyes::Tritan => TRITAN,
            // The weights of relative luminance (WCAG 2.2), as in `Colour::grey`.
            Eyes::Grey => [[0.2126, 0.7152, 0.0722]; 3],
        };
        let light = [colour.r, colour.g, colour.b].map(|v| self.light.get(usize::from(v)).copied().unwrap_or(0.0));
        let [r, g, b] = matrix.map(|row| {
            let sum: f64 = row.iter().zip(light).map(|(m, v)| m * v).sum();
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                clippy::cast_precision_loss,
                reason = "clamped to the table"
            )]
            let step = (sum.clamp(0.0, 1.0) * STEPS as f64).round() as usize;
            self.back.get(step).copied().unwrap_or(u8::MAX)
        });
        Colour { r, g, b }
    }
}
