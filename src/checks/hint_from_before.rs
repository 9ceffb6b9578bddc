use std::collections::BTreeSet;

use super::{Draft, Facts, Sink, ladder, mends};

check!(
    /// ## What it does
    /// Notes a hint that is nearly what the mechanic drafts for the puzzle as it stands, with other words in it: most
    /// likely a draft that was taken before the puzzle was arranged anew or given another answer.
    ///
    /// ## Why it matters at the table
    /// A hint that names the places or the words of an earlier arrangement leads a stuck group astray.
    ///
    /// ## How to mend
    /// Take the draft of today, or write the hint in your own words.
    HintFromBefore, "hint-from-before", Notes, "a hint that may speak of an earlier arrangement",
    "it leads a stuck group astray", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for hint in ladder::hints(facts) {
        let Some(laid) = facts.party.puzzle(&hint.puzzle.id) else { continue };
        let drafted = laid.drafted.step(hint.step).trim();
        if !mends::alike(hint.text, drafted) {
            continue;
        }
        // Words left out or put in are an author's own touch; words exchanged for others are what differs.
        let (own, todays) = (words(hint.text), words(drafted));
        let (gone, come) = (own.difference(&todays), todays.difference(&own));
        if let (Some(gone), Some(come)) = (gone.into_iter().next(), come.into_iter().next()) {
            let message = format!(
                "the {} of \"{}\" says \"{gone}\", where the mechanic's draft now says \"{come}\"",
                hint.step.word(),
                hint.puzzle.title
            );
            let draft = Draft::new(hint.anchor.clone(), message).help("see whether it still speaks of this arrangement");
            sink.add(mends::with_drafted(facts, draft, &hint));
        }
    }
}

/// The words of a text, each once.
fn words(text: &str) -> BTreeSet<String> {
    let words = text.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect()
}
