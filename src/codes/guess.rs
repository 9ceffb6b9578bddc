use crate::kit::LockKind;

/// Why a code is among those that people try first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guess {
    /// One digit, letter or push throughout.
    Same,
    /// Digits that go up or down by one.
    Run,
    /// Four digits that begin like a year.
    Year,
    /// A date of the holidays.
    Date,
    /// A number from films.
    Film,
}

impl Guess {
    /// What the code is: "a run".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Same => "one symbol throughout",
            Self::Run => "a run",
            Self::Year => "like a year",
            Self::Date => "a date of the holidays",
            Self::Film => "known from films",
        }
    }
}

/// Dates that guests of a party think of, as day and month or month and day: the turn of the year, the eves and
/// days of winter holidays, the fourteenth of February.
const DATES: &[&str] =
    &["2512", "1225", "2412", "1224", "3112", "1231", "0101", "2112", "1221", "1402", "0214", "0601", "0106"];

/// What is easy to guess about a code; nothing about codes of one or two symbols, which are soon tried anyway.
#[must_use]
pub fn guess(kind: &LockKind, code: &str) -> Option<Guess> {
    let symbols: Vec<char> = code.chars().collect();
    if symbols.len() < 3 {
        return None;
    }
    let same = symbols.windows(2).all(|pair| pair[0] == pair[1]);
    match kind {
        LockKind::Digits(_) if same => Some(Guess::Same),
        LockKind::Digits(_) => of_digits(code, &symbols),
        LockKind::Letters(_) | LockKind::Directions(_) => same.then_some(Guess::Same),
        LockKind::Key | LockKind::Spoken => None,
    }
}

fn of_digits(code: &str, symbols: &[char]) -> Option<Guess> {
    let digits: Vec<i64> = symbols.iter().filter_map(|c| c.to_digit(10)).map(i64::from).collect();
    let all = |step: i64| digits.windows(2).all(|pair| pair[1] - pair[0] == step);
    if all(1) || all(-1) {
        Some(Guess::Run)
    } else if digits.len() == 4 && (code.starts_with("19") || code.starts_with("20")) {
        Some(Guess::Year)
    } else if DATES.contains(&code) {
        Some(Guess::Date)
    } else if code == "007" {
        Some(Guess::Film)
    } else {
        None
    }
}
