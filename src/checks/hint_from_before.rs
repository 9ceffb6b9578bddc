use std::collections::BTreeSet;

use super::ladder::Hint;
use super::{Draft, Facts, Sink, ladder, mends};
use crate::diag::{Anchor, PuzzleField};

check!(
    /// ## What it does
    /// Notes a hint that is nearly what the mechanic drafts for the puzzle as it stands, with other words in it: most
    /// likely a draft that was taken before the puzzle was arranged anew or given another answer. Notes as well a hint in
    /// the author's own words that names a number, a letter or a word which the puzzle showed before it got another code
    /// (`inklatch codes --write`) or theme (`inklatch redress`), and does not show now.
    ///
    /// ## Why it matters at the table
    /// A hint that names the places or the words of an earlier arrangement leads a stuck group astray.
    ///
    /// ## How to mend
    /// Take the draft of today, or write the hint in your own words. A hint that still holds may be taken out of `old_hints`,
    /// under `dressed` in kit.ron.
    HintFromBefore, "hint-from-before", Notes, "a hint that may speak of an earlier arrangement",
    "it leads a stuck group astray", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for hint in ladder::hints(facts) {
        let Some(laid) = facts.party.puzzle(&hint.puzzle.id) else { continue };
        let drafted = laid.drafted.step(hint.step).trim();
        // Words left out or put in are an author's own touch; words exchanged for others are what differs.
        let (own, todays) = (words(hint.text), words(drafted));
        let (gone, come) = (own.difference(&todays), todays.difference(&own));
        let exchanged = mends::alike(hint.text, drafted).then(|| gone.into_iter().next().zip(come.into_iter().next()));
        let message = if let Some((gone, come)) = exchanged.flatten() {
            format!(
                "the {} of \"{}\" says \"{gone}\", where the mechanic's draft now says \"{come}\"",
                hint.step.word(),
                hint.puzzle.title
            )
        } else if let Some(says) = remembered(facts, &hint) {
            format!(
                "the {} of \"{}\" says {says}, as the puzzle showed before it was arranged anew",
                hint.step.word(),
                hint.puzzle.title
            )
        } else {
            continue;
        };
        let draft = Draft::new(hint.anchor.clone(), message).help("see whether it still speaks of this arrangement");
        sink.add(mends::with_drafted(facts, draft, &hint));
    }
}

/// What a hint says that was there before, in words, where it stands as it did then.
fn remembered(facts: &Facts<'_>, hint: &Hint<'_>) -> Option<String> {
    let at = hint.anchor.to_string();
    let record = facts.kit.dressed.old_hints.iter().find(|record| record.at == at)?;
    let Anchor::Puzzle(_, PuzzleField::Hint(level, step)) = hint.anchor else { return None };
    let same = hint.puzzle.hints_at(level).step(step).trim() == record.text;
    same.then(|| record.says.iter().map(|word| format!("\"{word}\"")).collect::<Vec<_>>().join(", "))
}

/// The words of a text, each once.
fn words(text: &str) -> BTreeSet<String> {
    let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect()
}
