use crate::script::capital;
use serde::Serialize;

use super::evening::titled;
use super::words::{is_told, list, pushes, sentence, shown};
use super::{Source, spoken};
use crate::kit::LockKind;

/// One answer with its reasons.
#[derive(Clone, Debug, Serialize)]
pub(super) struct AnswerText {
    mark: String,
    title: String,
    answer: String,
    worded: bool,
    /// A row of pushes in words; empty where it is none.
    pushes: String,
    opens: String,
    reason: String,
    /// What fixes the order.
    order: &'static str,
    /// What they may dial instead, and what went wrong then.
    wrong: Vec<(String, &'static str)>,
}

/// Common wrong answers: read from its end, put in order, told with left for right.
fn wrong(kind: &LockKind, answer: &str) -> Vec<(String, &'static str)> {
    let right: Vec<char> = shown(kind, answer).to_uppercase().chars().collect();
    let from_end = || right.iter().rev().copied().collect::<Vec<char>>();
    let sorted = || {
        let mut sorted = right.clone();
        sorted.sort_unstable();
        sorted
    };
    let mirrored = || {
        let side = |c: &char| match c {
            'L' => 'R',
            'R' => 'L',
            other => *other,
        };
        right.iter().map(side).collect()
    };
    let wrong_end = "they began at the wrong end.";
    let tried: Vec<(Vec<char>, &'static str)> = match kind {
        LockKind::Digits(_) => {
            vec![(from_end(), wrong_end), (sorted(), "they have all of it, but in order of size.")]
        }
        LockKind::Letters(_) => {
            vec![(from_end(), wrong_end), (sorted(), "they have all of it, but in the order of the alphabet.")]
        }
        LockKind::Directions(_) => {
            vec![(from_end(), wrong_end), (mirrored(), "they took left for right: they read it from the other side.")]
        }
        LockKind::Spoken => vec![(from_end(), "they read it backwards.")],
        LockKind::Key => Vec::new(),
    };
    let mut found: Vec<(String, &'static str)> = Vec::new();
    for (other, why) in tried {
        let other_text: String = other.iter().collect();
        if other != right && found.iter().all(|(known, _)| *known != other_text) {
            found.push((other_text, why));
        }
    }
    found
}

/// What fixes the order, where that is one thing whatever the setup: else the reasons say it.
fn order(of: &'static str) -> &'static str {
    if of.contains([';', ':']) { "" } else { of }
}

/// A caution with the body of rules that it comes from.
#[derive(Clone, Debug, Serialize)]
pub(super) struct CautionText {
    about: String,
    text: String,
    source: String,
}

/// The answers in the kit's order.
pub(super) fn answers(source: &Source<'_>) -> Vec<AnswerText> {
    let kit = &source.opened.kit;
    kit.puzzles
        .iter()
        .map(|puzzle| {
            let lock = kit.lock(&puzzle.opens);
            let laid = source.party.puzzle(&puzzle.id);
            let title = source.party.script.puzzle(&puzzle.id).map_or(puzzle.title.as_str(), |text| &text.title);
            let reason = match laid.map(|laid| (&laid.laid, laid)) {
                Some((Ok(_), laid)) => match &laid.work {
                    Some(work) => format!("{} {}", sentence(&laid.reason), sentence(&work.says)),
                    None => sentence(&laid.reason),
                },
                Some((Err(trouble), _)) => format!("This puzzle could not be laid out: {}.", trouble.message),
                None => String::new(),
            };
            let answer = laid.map_or(puzzle.answer.as_str(), |laid| &laid.answer);
            AnswerText {
                mark: lock.map(|lock| lock.mark.clone()).unwrap_or_default(),
                title: titled(title, lock),
                answer: lock.map_or_else(|| answer.to_owned(), |lock| shown(&lock.kind, answer)),
                worded: lock.is_none_or(|lock| is_told(&lock.kind, answer)),
                pushes: lock.and_then(|lock| pushes(&lock.kind, answer)).unwrap_or_default(),
                opens: lock.map_or_else(|| "opens no lock".to_owned(), |lock| spoken::opens(source, lock)),
                reason,
                order: crate::mechanics::find(&puzzle.mechanic).map_or("", |mechanic| order(mechanic.meta().order)),
                wrong: lock.map(|lock| wrong(&lock.kind, answer)).unwrap_or_default(),
            }
        })
        .collect()
}

/// The cautions of exactly the materials that the kit uses.
pub(super) fn cautions(source: &Source<'_>) -> Vec<CautionText> {
    source
        .prep
        .cautions
        .iter()
        .map(|caution| CautionText {
            about: capital(&list(&caution.of.iter().map(|name| (*name).to_owned()).collect::<Vec<_>>())),
            text: sentence(caution.text),
            source: caution.source.to_owned(),
        })
        .collect()
}
