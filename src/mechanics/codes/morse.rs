//! International Morse code: letters, figures and spacing of Recommendation ITU-R M.1677-1 (10/2009), Annex 1,
//! part I, sections 1 and 2. The table was checked against public copies that name it, not the original.

use serde::{Deserialize, Serialize};

/// Units of a dot; a dash lasts three times as long.
pub const DOT: u8 = 1;
/// Units of a dash.
pub const DASH: u8 = 3;
/// Units between the dots and dashes of one letter.
pub const WITHIN: u8 = 1;
/// Units between two letters.
pub const BETWEEN: u8 = 3;
/// Units between two words.
pub const WORDS: u8 = 7;

/// Letters A to Z and figures 0 to 9 with their dots and dashes.
pub const TABLE: &[(char, &str)] = &[
    ('A', ".-"),
    ('B', "-..."),
    ('C', "-.-."),
    ('D', "-.."),
    ('E', "."),
    ('F', "..-."),
    ('G', "--."),
    ('H', "...."),
    ('I', ".."),
    ('J', ".---"),
    ('K', "-.-"),
    ('L', ".-.."),
    ('M', "--"),
    ('N', "-."),
    ('O', "---"),
    ('P', ".--."),
    ('Q', "--.-"),
    ('R', ".-."),
    ('S', "..."),
    ('T', "-"),
    ('U', "..-"),
    ('V', "...-"),
    ('W', ".--"),
    ('X', "-..-"),
    ('Y', "-.--"),
    ('Z', "--.."),
    ('0', "-----"),
    ('1', ".----"),
    ('2', "..---"),
    ('3', "...--"),
    ('4', "....-"),
    ('5', "....."),
    ('6', "-...."),
    ('7', "--..."),
    ('8', "---.."),
    ('9', "----."),
];

/// A stretch of ink or of gap, so many units long.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Run {
    /// Whether there is ink.
    pub ink: bool,
    /// How long it is.
    pub units: u8,
}

/// The dots and dashes of a letter or figure.
#[must_use]
pub fn code(symbol: char) -> Option<&'static str> {
    TABLE.iter().find(|(known, _)| *known == symbol.to_ascii_uppercase()).map(|(_, code)| *code)
}

/// Ink and gaps of a text; spaces part words. None when a symbol has no code here.
#[must_use]
pub fn runs(text: &str) -> Option<Vec<Run>> {
    let mut runs: Vec<Run> = Vec::new();
    let mut gap = 0;
    for symbol in text.trim().chars() {
        if symbol == ' ' {
            gap = WORDS;
            continue;
        }
        for element in code(symbol)?.chars() {
            if !runs.is_empty() {
                runs.push(Run { ink: false, units: gap });
            }
            runs.push(Run { ink: true, units: if element == '.' { DOT } else { DASH } });
            gap = WITHIN;
        }
        gap = BETWEEN;
    }
    Some(runs)
}

/// How long runs are together, in units.
#[must_use]
pub fn length(runs: &[Run]) -> u32 {
    runs.iter().map(|run| u32::from(run.units)).sum()
}
