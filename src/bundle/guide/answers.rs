use crate::script::capital;
use serde::Serialize;

use super::evening::titled;
use super::words::{is_told, list, pushes, sentence, shown};
use super::{Source, spoken};
use crate::kit::LockKind;
use crate::mechanics::slips::{self, Slip};
use crate::mechanics::solved::Solved;
use crate::party::LaidPuzzle;

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
    /// The solved state, where there is more to see than words tell.
    solved: Option<Solved>,
    /// What they may dial instead, and what went wrong then.
    wrong: Vec<(String, &'static str)>,
}

/// What a slip of the puzzle's own pattern leads to.
fn slips(laid: Option<&LaidPuzzle>, kind: &LockKind) -> Vec<Slip> {
    let Some((laid, view)) = laid.and_then(|laid| Some((laid, laid.laid.as_ref().ok()?))) else { return Vec::new() };
    slips::told(&**view, kind, &laid.answer)
}

/// Common wrong answers: a slip of the pattern's own, read from its end, put in order, told with left for right.
fn wrong(kind: &LockKind, answer: &str, slips: Vec<Slip>) -> Vec<(String, &'static str)> {
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
            vec![(from_end(), wrong_end), (sorted(), "all of it is there, but in order of size.")]
        }
        LockKind::Letters(_) => {
            vec![(from_end(), wrong_end), (sorted(), "all of it is there, but in the order of the alphabet.")]
        }
        LockKind::Directions(_) => {
            vec![
                (from_end(), "they have the pushes from the last to the first."),
                (mirrored(), "left and right are changed round."),
            ]
        }
        LockKind::Spoken => vec![(from_end(), "they read it backwards.")],
        LockKind::Key => Vec::new(),
    };
    let mut found: Vec<(String, &'static str)> = Vec::new();
    let slips = slips.into_iter().map(|(other, why)| (other.to_uppercase().chars().collect::<Vec<char>>(), why));
    for (other, why) in slips.chain(tried) {
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
                Some((Ok(_), laid)) => sentence(&laid.reason),
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
                solved: laid.and_then(|laid| laid.laid.as_ref().ok()).and_then(|view| view.solved()),
                wrong: lock.map(|lock| wrong(&lock.kind, answer, slips(laid, &lock.kind))).unwrap_or_default(),
            }
        })
        .collect()
}

/// A material's name without what tells it from its like.
fn plain(name: &str) -> String {
    name.split([',', '(']).next().unwrap_or(name).trim().to_owned()
}

/// The cautions of exactly the materials that the kit uses.
pub(super) fn cautions(source: &Source<'_>) -> Vec<CautionText> {
    source
        .prep
        .cautions
        .iter()
        .map(|caution| CautionText {
            about: capital(&list(&caution.of.iter().map(|name| plain(name)).collect::<Vec<_>>())),
            text: sentence(caution.text),
            source: caution.source.to_owned(),
        })
        .collect()
}
