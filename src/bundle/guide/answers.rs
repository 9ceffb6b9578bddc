use crate::script::capital;
use serde::Serialize;

use super::evening::titled;
use super::words::shown;
use super::words::{Pointed, list, pointed, sentence};
use super::{Source, spoken};
use crate::kit::LockKind;

/// One answer with its reasons.
#[derive(Clone, Debug, Serialize)]
pub(super) struct AnswerText {
    mark: String,
    title: String,
    answer: String,
    worded: bool,
    opens: String,
    reason: String,
    /// What fixes the order.
    order: &'static str,
    /// What they may dial instead, and what went wrong then.
    wrong: Vec<(String, &'static str)>,
}

/// Common wrong answers to a row of digits or letters: read from its end, or put in order.
fn wrong(kind: &LockKind, answer: &str) -> Vec<(String, &'static str)> {
    if !matches!(kind, LockKind::Digits(_) | LockKind::Letters(_)) {
        return Vec::new();
    }
    let right: Vec<char> = shown(kind, answer).chars().collect();
    let mut sorted = right.clone();
    sorted.sort_unstable();
    let sorted_by = match kind {
        LockKind::Letters(_) => "they have all of it, but in the order of the alphabet.",
        _ => "they have all of it, but in order of size.",
    };
    let tried =
        [(right.iter().rev().copied().collect::<Vec<char>>(), "they began at the wrong end."), (sorted, sorted_by)];
    let mut found: Vec<(String, &'static str)> = Vec::new();
    for (other, why) in tried {
        let other_text: String = other.iter().collect();
        if other != right && found.iter().all(|(known, _)| *known != other_text) {
            found.push((other_text, why));
        }
    }
    found
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
                worded: lock.is_none_or(|lock| matches!(lock.kind, LockKind::Key | LockKind::Spoken)),
                opens: lock.map_or_else(|| "opens no lock".to_owned(), |lock| spoken::opens(source, lock)),
                reason,
                order: crate::mechanics::find(&puzzle.mechanic).map_or("", |mechanic| mechanic.meta().order),
                wrong: lock.map(|lock| wrong(&lock.kind, answer)).unwrap_or_default(),
            }
        })
        .collect()
}

/// What to put back for the next group, each line once; and what has to be had anew.
pub(super) fn reset(source: &Source<'_>) -> Vec<Pointed> {
    let mut lines: Vec<Pointed> = Vec::new();
    for laid in &source.party.puzzles {
        let line = pointed(sentence(&laid.reset), "");
        if !line.text.is_empty() && !lines.contains(&line) {
            lines.push(line);
        }
    }
    let kit = &source.opened.kit;
    let dialled = kit.locks.iter().any(|lock| lock.kind.wheels().is_some());
    let scramble = if dialled { ", scramble every lock, and test each twice while it is open" } else { "" };
    lines.push(pointed(format!("Count the tools and small parts{scramble}."), ""));
    lines.push(pointed("Put the tokens back in order of their marks, and write the closing card afresh.", ""));
    let used: Vec<String> =
        source.prep.shopping.iter().filter(|line| line.used_up).map(|line| source.say(&line.name)).collect();
    if !used.is_empty() {
        lines.push(pointed(format!("Have ready again what was used up: {}", list(&used)), "needs"));
    }
    lines
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
