use super::{Draft, Facts, Finding, Fix, FixKind, Sink, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::kit::edit::Edit;
use crate::redress::{Leftover, Mend, leftovers, mend};

check!(
    /// ## What it does
    /// Flags words of the season before in a kit that was put into another theme, in all texts, setups, titles, names and
    /// file names: as whole words, one or several, so that "owls" and "the owl's" are found for "owl", and a gardener is
    /// no garden. A name that is mostly said as another kind of word, such as "can" or "well", is found after an article or
    /// a word such as "your", and where it stands alone. What stands in a slot is not meant.
    ///
    /// ## Why it matters at the table
    /// An owl in a harbour makes guests laugh in the wrong place; the name of a picture or a colour that is no longer
    /// printed leads them astray.
    ///
    /// ## How to mend
    /// Make it a slot, which every theme fills; let the new word stand there; or say that you want to keep it. The
    /// window offers all three; `inklatch redress --mend` does the first two wherever no question is open: a slot of the
    /// same word, the new name of a picture in the texts of a puzzle that prints it.
    LeftoverWord, "leftover-word", Warns, "a word of the season before, in a kit that was put into another theme",
    "it tells of another season than everything around it", run,
    tried
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for leftover in leftovers(facts.kit) {
        let mut draft = Draft::new(leftover.anchor.clone(), told(&leftover));
        if leftover.printed {
            draft = draft.why(format!("guests look for it, and {} is printed in its place", leftover.word.now));
        }
        let kept = "write it anew, or keep it if it is meant";
        // A setup that says something else may be another puzzle, or none: there a mend is tried before it is offered.
        draft = match first(facts, &leftover).filter(|_| !in_setup(&leftover.anchor)) {
            Some((title, edits)) => draft.fix(title, FixKind::Ask, edits),
            None => draft.help(kept),
        };
        sink.add(draft);
    }
}

fn told(leftover: &Leftover) -> String {
    let where_from = match &leftover.word.theme {
        Some(theme) => format!("\"{}\" of the theme {theme}", leftover.word.one),
        None => format!("\"{}\"", leftover.word.one),
    };
    match leftover.file_name {
        true => format!("{where_from} stayed in a file name: {}", leftover.around),
        false => format!("{where_from} stayed: \"{}\"", leftover.around),
    }
}

/// The mend that comes first for a leftover, if there is one that needs no thought: its title and its edits.
fn first(facts: &Facts<'_>, leftover: &Leftover) -> Option<(String, Vec<Edit>)> {
    let theme = &facts.theme.theme;
    if leftover.slot {
        let title = format!("Make it the slot {{{{ {} }}}}", leftover.word.slot);
        Some((title, mend(facts.kit, theme, leftover, Mend::Slot)))
    } else if leftover.replace && (leftover.by_rule || leftover.printed) {
        Some(("Let the new word stand there".to_owned(), mend(facts.kit, theme, leftover, Mend::Replace)))
    } else {
        None
    }
}

const fn in_setup(anchor: &Anchor) -> bool {
    matches!(anchor, Anchor::Puzzle(_, PuzzleField::Setup))
}

/// The mend of a leftover in a setup with which the puzzle is as sound as before.
fn tried(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    if !in_setup(&finding.anchor) {
        return None;
    }
    let found = leftovers(facts.kit);
    let leftover = found.iter().find(|other| other.anchor == finding.anchor && told(other) == finding.message)?;
    let (title, edits) = first(facts, leftover)?;
    trying::sound(facts, finding, [trying::ask(title, edits)])
}
