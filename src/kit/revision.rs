use std::fmt;

use serde::{Deserialize, Serialize};

/// Which printing of the kit this is, for those who have an older one. All of it may be left out.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Revision {
    /// What it is called, for example "2" or "spring 2027".
    pub name: String,
    /// The day of it, as "2027-01-31". With a day, every PDF is also made for archives (PDF/A).
    pub day: Option<Day>,
    /// What changed since the last one, a sentence each.
    pub changes: Vec<String>,
}

/// A day of the Gregorian calendar, written as year, month and day: "2027-01-31".
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Day {
    year: u16,
    month: u8,
    day: u8,
}

impl Day {
    /// Reads "2027-01-31" (ISO 8601, extended format).
    ///
    /// # Errors
    /// When it is no day; the words say how to write one.
    pub fn parse(text: &str) -> Result<Self, String> {
        let wrong = || format!("\"{text}\" is no day: write year, month and day, as in \"2027-01-31\"");
        let plain = text
            .bytes()
            .enumerate()
            .all(|(at, b)| matches!(at, 4 | 7) == (b == b'-') && (b == b'-' || b.is_ascii_digit()));
        let (true, 10) = (plain, text.len()) else { return Err(wrong()) };
        let number = |from: usize, to: usize| text.get(from..to).and_then(|part| part.parse::<u16>().ok());
        let (Some(year), Some(month), Some(day)) = (number(0, 4), number(5, 7), number(8, 10)) else {
            return Err(wrong());
        };
        if year == 0 || !(1..=12).contains(&month) || day == 0 || day > days(year, month) {
            return Err(wrong());
        }
        let byte = |value: u16| u8::try_from(value).map_err(|_| wrong());
        Ok(Self { year, month: byte(month)?, day: byte(day)? })
    }

    /// Year, month counted from 1, day counted from 1.
    #[must_use]
    pub const fn parts(self) -> (u16, u8, u8) {
        (self.year, self.month, self.day)
    }
}

/// Days of a month (Gregorian calendar).
const fn days(year: u16, month: u16) -> u16 {
    match month {
        2 if year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400)) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

impl From<Day> for String {
    fn from(day: Day) -> Self {
        day.to_string()
    }
}

impl TryFrom<String> for Day {
    type Error = String;

    fn try_from(text: String) -> Result<Self, Self::Error> {
        Self::parse(&text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Leap years by the Gregorian rule: 2000 and 2028 are, 1900 and 2027 are not.
    #[test]
    fn only_days_are_days() {
        for good in ["2027-01-31", "2028-02-29", "2000-02-29", "0001-12-31"] {
            assert_eq!(Day::parse(good).unwrap().to_string(), good);
        }
        for bad in [
            "",
            "2027-1-31",
            "2027-02-29",
            "1900-02-29",
            "2027-13-01",
            "2027-04-31",
            "31-01-2027",
            "2027-01-3é",
            "+027-01-31",
        ] {
            assert!(Day::parse(bad).is_err(), "{bad}");
        }
    }
}
