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
