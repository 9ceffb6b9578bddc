//! Six-dot braille, uncontracted: letters, numeric mode and indicators of Unified English Braille (International
//! Council on English Braille, Rulebook, sections 2, 4, 6, 8). A cell is written as its dots in rising order: "1245".
//! Dots 1, 2, 3 stand on the left from the top, 4, 5, 6 on the right. The table was checked against the Unicode block
//! U+2800, in which dot n sets bit n - 1.

/// The cell that digits follow.
pub const NUMERIC: &str = "3456";
/// The cell before a capital letter.
pub const CAPITAL: &str = "6";
/// The cell that ends numeric mode before a letter a to j.
pub const LETTER: &str = "56";

/// Letters with their dots.
pub const TABLE: &[(char, &str)] = &[
    ('A', "1"),
    ('B', "12"),
    ('C', "14"),
    ('D', "145"),
    ('E', "15"),
    ('F', "124"),
    ('G', "1245"),
    ('H', "125"),
    ('I', "24"),
    ('J', "245"),
    ('K', "13"),
    ('L', "123"),
    ('M', "134"),
    ('N', "1345"),
    ('O', "135"),
    ('P', "1234"),
    ('Q', "12345"),
    ('R', "1235"),
    ('S', "234"),
    ('T', "2345"),
    ('U', "136"),
    ('V', "1236"),
    ('W', "2456"),
    ('X', "1346"),
    ('Y', "13456"),
    ('Z', "1356"),
];

/// Digits borrow the cells of letters: A to I are 1 to 9, and J is 0.
const FIGURES: &str = "JABCDEFGHI";

/// The dots of a letter or digit, without indicators.
#[must_use]
pub fn dots(symbol: char) -> Option<&'static str> {
    let letter = match symbol.to_digit(10) {
        Some(digit) => FIGURES.chars().nth(usize::try_from(digit).ok()?)?,
        None => symbol.to_ascii_uppercase(),
    };
    TABLE.iter().find(|(known, _)| *known == letter).map(|(_, dots)| *dots)
}

/// The cells of a text with all indicators; a space is an empty cell. None when a symbol has no cell here.
#[must_use]
pub fn cells(text: &str) -> Option<Vec<&'static str>> {
    let mut cells = Vec::new();
    let mut numeric = false;
    for symbol in text.chars() {
        if symbol == ' ' {
            cells.push("");
            numeric = false;
            continue;
        }
        if symbol.is_ascii_digit() && !numeric {
            cells.push(NUMERIC);
        }
        if symbol.is_ascii_uppercase() {
            cells.push(CAPITAL);
        } else if numeric && ('a'..='j').contains(&symbol) {
            cells.push(LETTER);
        }
        numeric = symbol.is_ascii_digit();
        cells.push(dots(symbol)?);
    }
    Some(cells)
}

/// The cell after half a turn: dot 1 changes places with dot 6, 2 with 5, 3 with 4.
#[must_use]
pub fn turned(cell: &str) -> String {
    let mut dots: Vec<u32> =
        cell.chars().filter_map(|dot| dot.to_digit(10)).map(|dot| 7_u32.saturating_sub(dot)).collect();
    dots.sort_unstable();
    dots.iter().map(u32::to_string).collect()
}
