use super::leftovers::{Leftover, leftovers};
use super::phrase::{Form, as_slot, as_word, hits};
use crate::diag::Anchor;
use crate::files::VPath;
use crate::ids::KitId;
use crate::kit::edit::{Edit, between};
use crate::kit::{Kept, Kit, OldWord, WordForms, visit_texts};
use crate::limits;
use crate::theme::Theme;

/// What to do with a leftover.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mend {
    /// Let a slot stand there, which every theme fills with its own word.
    Slot,
    /// Let the new theme's word stand there.
    Replace,
    /// Leave it, and say no more of it.
    Keep,
}

/// The edits that mend a leftover, one step of undo; none when it cannot be mended so.
#[must_use]
pub fn mend(kit: &Kit, theme: &Theme, leftover: &Leftover, how: Mend) -> Vec<Edit> {
    let mut fresh = kit.clone();
    mend_in(&mut fresh, theme, leftover, how);
    between(kit, &fresh)
}

/// A kit with every leftover mended that can be: by a slot where there is one, else by the new word.
#[must_use]
pub fn mend_all(kit: &Kit, theme: &Theme) -> Kit {
    let mut fresh = kit.clone();
    // A mended place can show another old word; each round takes at least one away.
    for _ in 0..limits::FIX_ROUNDS {
        let found = leftovers(&fresh);
        let before = fresh.clone();
        for leftover in found {
            let how = if leftover.slot { Mend::Slot } else { Mend::Replace };
            mend_in(&mut fresh, theme, &leftover, how);
        }
        if fresh == before {
            break;
        }
    }
    fresh
}

fn mend_in(kit: &mut Kit, theme: &Theme, leftover: &Leftover, how: Mend) {
    let word = &leftover.word;
    if how == Mend::Keep {
        kit.dressed.kept.push(Kept { at: leftover.anchor.to_string(), what: word.one.clone() });
        return;
    }
    if (how == Mend::Slot && !leftover.slot) || (how == Mend::Replace && !leftover.replace) {
        return;
    }
    let new = new_word(kit, theme, word);
    let change = |text: &str| -> String {
        let mut out = text.to_owned();
        // From the end, so that the places before stay where they are.
        for hit in hits(text, std::slice::from_ref(word)).iter().rev().filter(|hit| hit.form != Form::Other) {
            let (span, put) = match how {
                Mend::Slot => as_slot(text, hit, &word.slot),
                _ => as_word(text, hit, &new),
            };
            if out.get(span.clone()).is_some() {
                out.replace_range(span, &put);
            }
        }
        out
    };
    if leftover.file_name {
        let id = change(&kit.id.as_str().replace('-', " "));
        kit.id = KitId::from_text(&id);
        return;
    }
    visit_texts(kit, &mut |at, text| {
        if *at == leftover.anchor {
            *text = change(text);
        }
    });
}

/// What the new theme says for an old word.
fn new_word(kit: &Kit, theme: &Theme, word: &OldWord) -> WordForms {
    let filled = kit.words.get(&word.slot).or_else(|| theme.words.get(&word.slot));
    match filled {
        Some(forms) if !word.slot.is_empty() => forms.clone(),
        _ => WordForms { one: word.now.clone(), ..WordForms::default() },
    }
}

/// The edits that keep an old picture.
#[must_use]
pub fn keep_picture(kit: &Kit, at: &Anchor, path: &VPath) -> Vec<Edit> {
    let mut dressed = kit.dressed.clone();
    dressed.kept.push(Kept { at: at.to_string(), what: path.to_string() });
    vec![Edit::Dressed(Box::new(dressed))]
}

/// Makes a slot of a word that the author picked: in the text at `anchor`, or with `everywhere` in all texts of the
/// kit. A word that no slot has yet becomes a word of the kit's own, under `slot`. Answers the edits, one step of undo,
/// and how many places change.
#[must_use]
pub fn make_slot(
    kit: &Kit,
    word: &str,
    slot: &str,
    known: Option<&WordForms>,
    only: Option<&Anchor>,
) -> (Vec<Edit>, usize) {
    let mut fresh = kit.clone();
    let forms = known.cloned().unwrap_or_else(|| WordForms { one: word.trim().to_owned(), ..WordForms::default() });
    let old =
        [OldWord { one: forms.one.clone(), many: forms.many.clone(), slot: slot.to_owned(), ..OldWord::default() }];
    let mut places = 0;
    visit_texts(&mut fresh, &mut |at, text| {
        // Words hold no slots; an id or a word of the setup may be one letter of a puzzle.
        if matches!(at, Anchor::Word(_)) || only.is_some_and(|only| only != at) {
            return;
        }
        let before = text.clone();
        for hit in hits(&before, &old).iter().rev().filter(|hit| hit.form != Form::Other) {
            let (span, put) = as_slot(&before, hit, slot);
            if text.get(span.clone()).is_some() {
                text.replace_range(span, &put);
                places += 1;
            }
        }
    });
    if known.is_none() {
        fresh.words.insert(slot.to_owned(), forms);
    }
    (between(kit, &fresh), places)
}
