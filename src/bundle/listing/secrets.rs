//! What a listing must not tell, and whether a text tells it.

use std::collections::BTreeSet;

use crate::checks::LevelProof;
use crate::codes::words;
use crate::diag::Step;
use crate::script::parse;

/// Answers shorter than this stand in any text by chance.
const LEAST_ANSWER: usize = 3;
/// Hints of fewer words than this are figures of speech rather than help.
const LEAST_HINT: usize = 4;

/// The answers and hints of a kit at every level that is exported, as rows of words.
#[derive(Debug, Default)]
pub(super) struct Secrets {
    told: BTreeSet<Vec<String>>,
}

impl Secrets {
    pub(super) fn of(levels: &[&LevelProof]) -> Self {
        let mut told = BTreeSet::new();
        for laid in levels.iter().flat_map(|level| &level.party.puzzles) {
            let answer = words(&laid.answer);
            if answer.iter().map(|word| word.chars().count()).sum::<usize>() >= LEAST_ANSWER {
                told.insert(answer);
            }
            for hints in [&laid.hints, &laid.drafted] {
                let hints = Step::ALL.iter().map(|step| words(&parse(hints.step(*step)).text()));
                told.extend(hints.filter(|hint| hint.len() >= LEAST_HINT));
            }
        }
        Self { told }
    }

    /// Whether a text holds an answer or a hint, however it is cased, marked and broken into lines.
    pub(super) fn tells(&self, text: &str) -> bool {
        let found = words(text);
        self.told.iter().any(|secret| found.windows(secret.len()).any(|part| part == secret.as_slice()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_secret_is_seen_through_case_marks_and_line_ends() {
        let row = |text: &str| text.split(' ').map(str::to_owned).collect::<Vec<_>>();
        let secrets = Secrets { told: BTreeSet::from([row("471"), row("find the cat s bowl")]) };
        assert!(secrets.tells("The log, page 471."));
        assert!(secrets.tells("Find the\ncat’s *bowl*"));
        assert!(!secrets.tells("4711 or 47"));
        assert!(!secrets.tells("Find the cat"));
    }
}
