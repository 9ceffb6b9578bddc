//! Symbols that can be read upside down.

/// Symbols that half a turn leaves readable, with what they then read as. Of the digits 0, 1 and 8 stay and 6
/// and 9 change places (arithmetic of the printed shapes; a 2 or 5 stays itself only in seven-segment
/// lettering, which no theme is set in). Of the capitals H, I, N, O, S, X and Z stay, M and W change places.
const TURNS: &[(char, char)] = &[
    ('0', '0'),
    ('1', '1'),
    ('6', '9'),
    ('8', '8'),
    ('9', '6'),
    ('H', 'H'),
    ('I', 'I'),
    ('M', 'W'),
    ('N', 'N'),
    ('O', 'O'),
    ('S', 'S'),
    ('W', 'M'),
    ('X', 'X'),
    ('Z', 'Z'),
];

/// The text as read after half a turn, if every symbol stays readable: "16" gives "91", "8" gives "8", "4" none.
#[must_use]
pub fn turned(text: &str) -> Option<String> {
    let turn = |symbol: char| {
        let symbol = symbol.to_ascii_uppercase();
        TURNS.iter().find(|(from, _)| *from == symbol).map(|(_, to)| *to)
    };
    text.chars().rev().map(turn).collect()
}

/// Whether half a turn makes another readable text of it, so that it needs a line beneath.
#[must_use]
pub fn turns(text: &str) -> bool {
    turned(text).is_some_and(|other| !other.eq_ignore_ascii_case(text))
}
