//! Follows the rows of the list, in every way of counting that nothing rules out.

use super::{Lead, Take, View};
use crate::kit::LockKind;
use crate::mechanics::fixed::Fixed;
use crate::mechanics::number_words;
use crate::readings::{Budget, Readings};

/// A way of counting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Counting {
    /// As the sheet's rule says.
    Stated,
    /// A hyphen parts two words.
    Hyphens,
    /// A dash or other sign between spaces is a word.
    Signs,
    /// The title is the first paragraph.
    TitleParagraph,
    /// The title is the first line of the first paragraph.
    TitleLine,
}

impl Counting {
    const ALL: [(Self, &'static str); 5] = [
        (Self::Stated, "counted as a rule would say"),
        (Self::Hyphens, "with two words for one with a hyphen"),
        (Self::Signs, "with signs counted as words"),
        (Self::TitleParagraph, "with the title as the first paragraph"),
        (Self::TitleLine, "with the title as the first line"),
    ];
}

/// The orders of three columns: which column holds paragraph, line and word.
const ORDERS: [([usize; 3], &str); 6] = [
    ([0, 1, 2], "paragraph, line, word"),
    ([0, 2, 1], "paragraph, word, line"),
    ([1, 0, 2], "line, paragraph, word"),
    ([2, 0, 1], "line, word, paragraph"),
    ([1, 2, 0], "word, paragraph, line"),
    ([2, 1, 0], "word, line, paragraph"),
];

/// The words of a line: what holds a letter or digit. A hyphen joins, a sign alone does not count.
pub(super) fn words(line: &str, counting: Counting) -> Vec<String> {
    let bare = |word: &str| word.chars().filter(|c| c.is_alphanumeric()).collect::<String>();
    let dashes = ['-', '\u{2010}'];
    let parts = line.split_whitespace().flat_map(|word| match counting {
        Counting::Hyphens => word.split(dashes).collect::<Vec<_>>(),
        _ => vec![word],
    });
    parts.map(bare).filter(|word| counting == Counting::Signs || !word.is_empty()).collect()
}

/// The word that a row leads to.
pub(super) fn word(text: &Fixed, lead: Lead, counting: Counting) -> Option<String> {
    let [mut paragraph, mut line, word] = lead.map(usize::from);
    match counting {
        Counting::TitleParagraph => paragraph = paragraph.checked_sub(1)?,
        Counting::TitleLine if paragraph == 1 => line = line.checked_sub(1)?,
        _ => {}
    }
    let line = text.paragraphs.get(paragraph.checked_sub(1)?)?.get(line.checked_sub(1)?)?;
    words(line, counting).into_iter().nth(word.checked_sub(1)?).filter(|word| !word.is_empty())
}

/// What a word gives.
pub(super) fn given(word: &str, take: Take) -> Option<String> {
    match take {
        Take::Words => Some(number_words::digit(word).map_or_else(|| word.to_uppercase(), String::from)),
        Take::Initials => word.chars().next().map(|letter| letter.to_uppercase().collect()),
        Take::Lengths => Some(word.chars().count().to_string()).filter(|digits| digits.len() == 1),
    }
}

pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    let orders = if view.columns { 1 } else { ORDERS.len() };
    let countings = if view.counting { 1 } else { Counting::ALL.len() };
    let takes: &[Take] = view.take.as_ref().map_or(&Take::ALL, std::slice::from_ref);
    for (order, order_name) in ORDERS.iter().take(orders) {
        for (counting, counting_name) in Counting::ALL.iter().take(countings) {
            let follow = |lead: &Lead| {
                let at = |column: usize| order.get(column).and_then(|from| lead.get(*from)).copied();
                word(&view.text, [at(0)?, at(1)?, at(2)?], *counting)
            };
            let Some(found) = view.leads.iter().map(follow).collect::<Option<Vec<String>>>() else { continue };
            for take in takes {
                let Some(said) = found.iter().map(|word| given(word, *take)).collect::<Option<Vec<String>>>() else {
                    continue;
                };
                let letters: Vec<char> = said.concat().chars().collect();
                let label = format!("{order_name}, {counting_name}, {}", take.words());
                number_words::add(&letters, &label, lock, budget, &mut all);
            }
        }
    }
    for lead in &view.leads {
        if view.columns && word(&view.text, *lead, Counting::Stated).is_none() {
            let [paragraph, line, word] = lead;
            all.remarks.push(format!("paragraph {paragraph}, line {line}, word {word} leads nowhere"));
        }
    }
    if !view.counting && view.text.lines().any(|line| words(line, Counting::Signs) != words(line, Counting::Hyphens)) {
        all.remarks.push("the text has hyphens or single signs, and nothing says how they count".into());
    }
    all
}
