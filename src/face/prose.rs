//! What guests read on pieces as sentences: rules and texts, not names, numbers or single words.

use std::collections::BTreeMap;

use super::{Audience, Piece};
use crate::diag::Anchor;

/// Fewest words with letters of what is read as a sentence: less is a name or a mark.
const SENTENCE: usize = 3;

/// The paragraphs that guests read on the fronts and backs of pieces, by where they come from; each once, however many
/// pieces bear it. A paragraph counts that has three words and ends, or parts, sentences.
#[must_use]
pub fn prose(pieces: &[Piece]) -> BTreeMap<&Anchor, Vec<String>> {
    let mut all: BTreeMap<&Anchor, Vec<String>> = BTreeMap::new();
    for piece in pieces.iter().filter(|piece| piece.audience == Audience::Players) {
        for run in piece.front.runs().chain(piece.back.iter().flat_map(|back| back.runs())) {
            let text = run.text.text();
            for paragraph in text.split("\n\n").map(|text| text.split_whitespace().collect::<Vec<_>>().join(" ")) {
                let own = all.entry(&run.from).or_default();
                if a_sentence(&paragraph) && !own.contains(&paragraph) {
                    own.push(paragraph);
                }
            }
        }
    }
    all.retain(|_, texts| !texts.is_empty());
    all
}

fn a_sentence(text: &str) -> bool {
    let words = text.split(' ').filter(|word| word.chars().filter(|c| c.is_alphabetic()).count() > 1).count();
    let ends = |word: &str| word.trim_end_matches(['"', '”', '’', ')']).ends_with(['.', '!', '?', ':', '…']);
    words >= SENTENCE && text.split(' ').any(ends)
}
