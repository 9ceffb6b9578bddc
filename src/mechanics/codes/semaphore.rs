//! Flag semaphore, letters A to Z and the sign that numerals follow.
//!
//! Arm positions are those of the public hand-position tables; the angles follow from the rule of circles (the first
//! circle, A to G, has one arm down; the second, H to N without J, one arm low; and so on).

/// The sign before numerals: one arm up, the other high on the signaller's left.
pub const NUMERALS: &str = "180-225";

/// Letters with their two arms: degrees clockwise from straight down, as seen by one who faces the signaller; the
/// smaller first.
pub const TABLE: &[(char, &str)] = &[
    ('A', "0-45"),
    ('B', "0-90"),
    ('C', "0-135"),
    ('D', "0-180"),
    ('E', "0-225"),
    ('F', "0-270"),
    ('G', "0-315"),
    ('H', "45-90"),
    ('I', "45-135"),
    ('J', "180-270"),
    ('K', "45-180"),
    ('L', "45-225"),
    ('M', "45-270"),
    ('N', "45-315"),
    ('O', "90-135"),
    ('P', "90-180"),
    ('Q', "90-225"),
    ('R', "90-270"),
    ('S', "90-315"),
    ('T', "135-180"),
    ('U', "135-225"),
    ('V', "180-315"),
    ('W', "225-270"),
    ('X', "225-315"),
    ('Y', "135-270"),
    ('Z', "270-315"),
];

/// Figures borrow the arms of letters: A to I are 1 to 9, and K is 0.
const FIGURES: &str = "KABCDEFGHI";

/// The arms of a letter or figure.
#[must_use]
pub fn arms(symbol: char) -> Option<&'static str> {
    let letter = match symbol.to_digit(10) {
        Some(digit) => FIGURES.chars().nth(usize::try_from(digit).ok()?)?,
        None => symbol.to_ascii_uppercase(),
    };
    TABLE.iter().find(|(known, _)| *known == letter).map(|(_, arms)| *arms)
}

/// The two angles of a sign such as "45-270".
#[must_use]
pub fn angles(sign: &str) -> Option<(u16, u16)> {
    let (a, b) = sign.split_once('-')?;
    Some((a.parse().ok()?, b.parse().ok()?))
}

/// The sign as seen from behind.
#[must_use]
pub fn mirrored(sign: &str) -> String {
    let Some((a, b)) = angles(sign) else { return sign.to_owned() };
    let other = |angle: u16| (720 - angle % 360) % 360;
    let (a, b) = (other(a), other(b));
    format!("{}-{}", a.min(b), a.max(b))
}
