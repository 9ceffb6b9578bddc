//! Numbers as a text can write them: digits, words, Roman numerals, "double four".

/// The numbers that have a word of their own below twenty, in order from nought.
const UNITS: &[&str] = &[
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
/// The tens from twenty.
const TENS: &[&str] = &["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
/// Other words for small numbers. "A pair", "once" and the like are everyday words and are left alone.
const OTHER: &[(&str, &str)] = &[("nought", "0"), ("nil", "0"), ("dozen", "12")];
/// Words that say the digit after them more than once.
const TIMES: &[(&str, usize)] = &[("double", 2), ("triple", 3), ("treble", 3)];
/// Roman numerals from the greatest, with the pairs that subtract (common usage, as in 3,999 = MMMCMXCIX).
const ROMAN: &[(u16, &str)] = &[
    (1000, "M"),
    (900, "CM"),
    (500, "D"),
    (400, "CD"),
    (100, "C"),
    (90, "XC"),
    (50, "L"),
    (40, "XL"),
    (10, "X"),
    (9, "IX"),
    (5, "V"),
    (4, "IV"),
    (1, "I"),
];

/// The number that a word in lower case says, in digits: "17" of "17" and of "seventeen".
#[must_use]
pub fn number(word: &str) -> Option<String> {
    if !word.is_empty() && word.chars().all(|c| c.is_ascii_digit()) {
        return Some(word.to_owned());
    }
    // Most words are none: they are told apart by their first letter.
    if !word.starts_with(['z', 'o', 't', 'f', 's', 'e', 'n', 'd']) {
        return None;
    }
    let unit = UNITS.iter().position(|unit| *unit == word);
    let ten = || TENS.iter().position(|ten| *ten == word).map(|at| (at + 2) * 10);
    let other = || OTHER.iter().find(|(other, _)| *other == word).map(|(_, digits)| (*digits).to_owned());
    unit.or_else(ten).map(|number| number.to_string()).or_else(other)
}

/// The value of a Roman numeral in capitals, from 1 to 3,999, written with the pairs that subtract.
#[must_use]
pub fn roman(text: &str) -> Option<u16> {
    let (mut rest, mut value) = (text, 0_u16);
    for (worth, sign) in ROMAN {
        // The signs that subtract and the fives stand once, the others up to three times.
        let most = if sign.len() == 2 || matches!(*sign, "D" | "L" | "V") { 1 } else { 3 };
        for _ in 0..most {
            let Some(after) = rest.strip_prefix(sign) else { break };
            (rest, value) = (after, value + worth);
        }
    }
    (rest.is_empty() && value > 0 && write_roman(value) == text).then_some(value)
}

fn write_roman(mut value: u16) -> String {
    let mut text = String::new();
    for (worth, sign) in ROMAN {
        while value >= *worth {
            text.push_str(sign);
            value -= worth;
        }
    }
    text
}

/// Each word as digits, where it is a number; "forty two" stands as 42 at its first word, "double four" as 44. The words
/// are given as they stand and in lower case.
pub(super) fn numbers(words: &[&str], lower: &[String]) -> Vec<Option<String>> {
    let mut found: Vec<Option<String>> = Vec::new();
    let (mut tens, mut times) = (false, 1);
    for (at, word) in lower.iter().enumerate() {
        let number = number(word).or_else(|| roman_word(words, at));
        if tens
            && let (Some(digit), Some(Some(last))) = (&number, found.last_mut())
            && digit.len() == 1
            && digit != "0"
        {
            last.pop();
            last.push_str(digit);
            tens = false;
            continue;
        }
        if let Some((_, many)) = TIMES.iter().find(|(name, _)| name == word) {
            times = *many;
            continue;
        }
        tens = TENS.contains(&word.as_str());
        found.push(number.map(|digits| if digits.len() == 1 { digits.repeat(times) } else { digits }));
        times = 1;
    }
    found
}

/// The Roman numeral at a place of a text. A single sign counts only beside another numeral: "I" is a word.
fn roman_word(words: &[&str], at: usize) -> Option<String> {
    let value = dial(words.get(at)?)?;
    let beside = |at: Option<usize>| at.and_then(|at| words.get(at)).is_some_and(|word| dial(word).is_some());
    let counts = words.get(at)?.len() > 1 || beside(at.checked_sub(1)) || beside(at.checked_add(1));
    counts.then(|| value.to_string())
}

/// A numeral in capitals, or in small letters of the signs below fifty, which make no word; clock dials write four
/// as IIII.
fn dial(word: &str) -> Option<u16> {
    // Most words are none: they are told apart by their first letter.
    if !word.starts_with(['M', 'D', 'C', 'L', 'X', 'V', 'I', 'x', 'v', 'i']) {
        return None;
    }
    let small = word.len() > 1 && word.chars().all(|c| matches!(c, 'i' | 'v' | 'x'));
    let word = if small { word.to_uppercase() } else { word.to_owned() };
    if word == "IIII" { Some(4) } else { roman(&word) }
}

/// A number below ten thousand in words, without "and"; none below a hundred or where the code starts with a nought.
pub(super) fn cardinal(code: &str) -> Option<Vec<String>> {
    let value: usize = code.parse().ok().filter(|value| (100..10_000).contains(value))?;
    if code.starts_with('0') {
        return None;
    }
    let mut row: Vec<String> = Vec::new();
    let unit = |n: usize| UNITS.get(n).map(|unit| (*unit).to_owned());
    if value >= 1000 {
        row.extend(unit(value / 1000));
        row.push("thousand".into());
    }
    if !(value / 100).is_multiple_of(10) {
        row.extend(unit(value / 100 % 10));
        row.push("hundred".into());
    }
    let rest = value % 100;
    if rest >= 20 {
        row.extend(TENS.get(rest / 10 - 2).map(|ten| (*ten).to_owned()));
        row.extend(unit(rest % 10).filter(|_| !rest.is_multiple_of(10)));
    } else if rest > 0 {
        row.extend(unit(rest));
    }
    Some(row)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_number_word_is_read() {
        for word in UNITS.iter().chain(TENS).chain(OTHER.iter().map(|(word, _)| word)) {
            assert!(number(word).is_some(), "{word}");
        }
        for (value, word) in [(4, "IIII"), (4, "iv"), (1000, "M"), (500, "D"), (100, "C"), (50, "L")] {
            assert_eq!(dial(word), Some(value), "{word}");
        }
        assert_eq!(dial("owl"), None);
    }
}
