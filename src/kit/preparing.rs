use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

/// A step of the host's preparation that the author adds: "Tie the ribbon round the bundle, in a firm knot."
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct OwnStep {
    /// What to do, in a sentence or two.
    pub what: String,
    /// Minutes of hands.
    pub minutes: f64,
    /// Minutes of waiting afterwards: drying, baking, cooling.
    pub wait: f64,
    /// What it takes, with how much of it for one group: materials of the built-in list in their units, or anything else
    /// in pieces: `{"string": 0.5, "large button": 2}`.
    pub takes: BTreeMap<String, f64>,
}

/// How much of a thing one group needs, in the unit of its material, else in pieces.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum HowMany {
    /// One; of what the party ends with, one for each guest.
    #[default]
    Usual,
    /// So much for each guest, bought for the most guests: `Each(2)`.
    Each(f64),
    /// So much for the whole group: `All(0.5)`.
    All(f64),
}

impl HowMany {
    /// The amount for a group of so many guests; `usual` is what it is where the kit does not say. What is no amount
    /// counts as the usual one.
    #[must_use]
    pub fn of(self, guests: u8, usual: Self) -> f64 {
        let sound = |value: f64| value.is_finite() && value > 0.0;
        match self {
            Self::Each(each) if sound(each) => each * f64::from(guests.max(1)),
            Self::All(all) if sound(all) => all,
            _ if usual == Self::Usual => 1.0,
            _ => usual.of(guests, Self::Usual),
        }
    }

    /// Whether the kit leaves it at the usual.
    #[must_use]
    pub fn is_usual(&self) -> bool {
        *self == Self::Usual
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_counted_for_guests_or_for_all() {
        assert_eq!(HowMany::Usual.of(8, HowMany::Usual), 1.0);
        assert_eq!(HowMany::Usual.of(8, HowMany::Each(1.0)), 8.0);
        assert_eq!(HowMany::Each(2.0).of(8, HowMany::Usual), 16.0);
        assert_eq!(HowMany::All(0.5).of(8, HowMany::Each(1.0)), 0.5);
        assert_eq!(HowMany::Each(f64::NAN).of(0, HowMany::Each(1.0)), 1.0);
    }
}
