use std::collections::BTreeMap;

use super::{Draft, Facts, Sink, mends, things};
use crate::codes::{Saying, says};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::LockKind;
use crate::party::OnView;

check!(
    /// ## What it does
    /// Flags the code of a lock that stands in a text which guests read and which is no part of its puzzle: the
    /// letter, a note, a title, another puzzle's piece.
    ///
    /// ## Why it matters at the table
    /// Everything in view is taken for a clue; a year or a price that happens to be the code opens the lock early.
    ///
    /// ## How to mend
    /// Change the text or the code. Where it is the theme that says it, give the puzzle `names` of its own, or choose another
    /// code.
    CodeInPlainSight, "code-in-plain-sight", Warns, "a code that stands in a text on view",
    "everything in view is taken for a clue, and this one opens the lock early", run, mends::other_code
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let texts = facts.party.on_view(facts.kit);
    let codes: Vec<things::Code<'_>> =
        things::codes(facts).into_iter().filter(|code| code.lock.kind != LockKind::Key).collect();
    let mut pairs: BTreeMap<usize, Vec<&OnView>> = BTreeMap::new();
    let index = things::index(&codes);
    for view in &texts {
        index.may_say(&view.text).into_iter().for_each(|code| pairs.entry(code).or_default().push(view));
    }
    for (code, texts) in pairs {
        let Some(code) = codes.get(code) else { continue };
        for OnView { from, name, text } in texts {
            let own = matches!(from, Anchor::Puzzle(id, field) if *id == code.puzzle.id && *field != PuzzleField::Title);
            if !own && says(text, &code.lock.kind, &code.answer) == Some(Saying::Whole) {
                let message = format!("the code of {} stands in {name}", code.lock.name);
                let draft = match of_theme(facts, from, text) {
                    Some((key, word)) => {
                        let theme = &facts.theme.theme.name;
                        Draft::new(from.clone(), format!("{message}: \"{word}\", as the theme {theme} calls it"))
                            .help(format!("give the puzzle words of its own: `names: {{ \"{key}\": \"…\" }}`"))
                            .help("or choose another code")
                    }
                    None => Draft::new(from.clone(), message).help("change the text or the code"),
                };
                sink.add(draft.about(&code.puzzle.id));
            }
        }
    }
}

/// The words of the theme of which a puzzle's text is made, with the key under which the puzzle can have others.
fn of_theme<'a>(facts: &Facts<'a>, from: &Anchor, text: &str) -> Option<(&'a str, &'a str)> {
    let Anchor::Puzzle(id, _) = from else { return None };
    let puzzle = facts.puzzle(id)?;
    let words = facts.theme.theme.dressings.get(&puzzle.mechanic)?;
    let own = |key: &String| puzzle.names.contains_key(key);
    let found = words.iter().find(|(key, word)| !own(key) && !word.trim().is_empty() && word.trim() == text.trim());
    found.map(|(key, word)| (key.as_str(), word.as_str()))
}
