//! What makes a drawing look drawn by hand, the same way each time.

use crate::script::{Paragraph, Rich, Span, parse};

/// Two numbers from -1 to 1 for a place of a drawing; `of` tells several of one place apart. They are not chance: the
/// same place gives the same numbers on every machine.
#[must_use]
pub fn jitter(row: usize, col: usize, of: usize) -> (f64, f64) {
    // SplitMix64 (Steele, Lea, Flood 2014; constants from memory), whose steps scatter neighbouring numbers well.
    let mix = |seed: u64| {
        let mut z = seed.wrapping_mul(0x9E37_79B9_7F4A_7C15);
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    };
    let seed = (row as u64 + 1).wrapping_mul(7919).wrapping_add((col as u64 + 1).wrapping_mul(104_729));
    let seed = seed.wrapping_add((of as u64).wrapping_mul(1_299_709));
    // 10,000 steps are finer than print.
    let unit = |value: u64| (value % 10_001) as f64 / 5_000.0 - 1.0;
    (unit(mix(seed)), unit(mix(seed ^ 0xA5A5_A5A5)))
}

/// The author's line, with its markup, and a rule below it.
#[must_use]
pub fn with_text(text: &str, rule: &str) -> Rich {
    let mut all = parse(text);
    if !rule.is_empty() {
        all.paragraphs.push(Paragraph { spans: vec![Span { text: rule.to_owned(), ..Span::default() }] });
    }
    all
}
