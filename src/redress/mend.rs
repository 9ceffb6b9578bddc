use super::leftovers::{Leftover, around, leftovers};
use super::phrase::{Form, as_slot, as_word, hits};
use super::sense::Sense;
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
    mend_in(&mut fresh, theme, leftover, how, &Sense::of(kit), None);
    between(kit, &fresh)
}

/// A place that was mended by rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mended {
    /// Where.
    pub anchor: Anchor,
    /// What stood there.
    pub was: String,
    /// With the words around it.
    pub around: String,
    /// What stands there now.
    pub is: String,
}

/// A kit with every leftover mended that can be without asking: by a slot where there is one, else by the new word. With
/// it each place that changed.
#[must_use]
pub fn mend_all(kit: &Kit, theme: &Theme) -> (Kit, Vec<Mended>) {
    let mut fresh = kit.clone();
    let mut mended = Vec::new();
    // A mended place can show another old word; each round takes at least one away.
    for _ in 0..limits::FIX_ROUNDS {
        let found = leftovers(&fresh);
        let before = fresh.clone();
        let sense = Sense::of(&before);
        for leftover in found.iter().filter(|leftover| leftover.by_rule) {
            let how = if leftover.slot { Mend::Slot } else { Mend::Replace };
            mend_in(&mut fresh, theme, leftover, how, &sense, Some(&mut mended));
        }
        if fresh == before {
            break;
        }
    }
    (fresh, mended)
}

/// Mends a leftover; with `mended` only those of its places that need no question, each noted there.
fn mend_in(
    kit: &mut Kit,
    theme: &Theme,
    leftover: &Leftover,
    how: Mend,
    sense: &Sense,
    mut mended: Option<&mut Vec<Mended>>,
) {
    let word = &leftover.word;
    if how == Mend::Keep {
        kit.dressed.kept.push(Kept { at: leftover.anchor.to_string(), what: word.one.clone() });
        return;
    }
    if (how == Mend::Slot && !leftover.slot) || (how == Mend::Replace && !leftover.replace) {
        return;
    }
    let picture = WordForms { one: word.now.clone(), ..WordForms::default() };
    let said = if leftover.printed { picture.clone() } else { new_word(kit, theme, word) };
    let by_rule = mended.is_some();
    let mut change = |at: &Anchor, text: &str| -> String {
        let mut out = text.to_owned();
        // From the end, so that the places before stay where they are.
        for hit in hits(text, std::slice::from_ref(word)).iter().rev().filter(|hit| hit.form != Form::Other) {
            let meant = sense.means(at, text, hit, word);
            let new = if meant { &picture } else { &said };
            if by_rule && !meant && (leftover.printed || word.slot.is_empty()) {
                continue;
            }
            let (span, put) = match how {
                Mend::Slot if !meant => as_slot(text, hit, &word.slot),
                _ => as_word(text, hit, new),
            };
            let Some(old) = out.get(span.clone()) else { continue };
            if old == put {
                continue;
            }
            if let Some(mended) = mended.as_deref_mut() {
                let around = around(text, hit);
                mended.push(Mended { anchor: at.clone(), was: old.to_owned(), around, is: put.clone() });
            }
            out.replace_range(span, &put);
        }
        out
    };
    if leftover.file_name {
        let id = change(&Anchor::Kit, &kit.id.as_str().replace('-', " "));
        kit.id = KitId::from_text(&id);
        return;
    }
    visit_texts(kit, &mut |at, text| {
        if *at == leftover.anchor {
            *text = change(at, text);
        }
    });
}

/// The edits that keep an old word wherever it stands, one step of undo, and at how many places.
#[must_use]
pub fn keep_everywhere(kit: &Kit, word: &OldWord) -> (Vec<Edit>, usize) {
    let mut dressed = kit.dressed.clone();
    for leftover in leftovers(kit).into_iter().filter(|leftover| leftover.word == *word) {
        let kept = Kept { at: leftover.anchor.to_string(), what: word.one.clone() };
        if !dressed.kept.contains(&kept) {
            dressed.kept.push(kept);
        }
    }
    let places = dressed.kept.len() - kit.dressed.kept.len();
    (vec![Edit::Dressed(Box::new(dressed))], places)
}

/// The places of `mended` that still stand as they were mended: a step may have been taken back.
#[must_use]
pub fn standing(kit: &Kit, mended: &[Mended]) -> Vec<Mended> {
    let mut copy = kit.clone();
    let mut said: Vec<(Anchor, String)> = vec![(Anchor::Kit, kit.id.as_str().replace('-', " "))];
    visit_texts(&mut copy, &mut |at, text| {
        if mended.iter().any(|place| place.anchor == *at) {
            said.push((at.clone(), text.clone()));
        }
    });
    let stands = |place: &&Mended| said.iter().any(|(at, text)| *at == place.anchor && text.contains(&place.is));
    mended.iter().filter(stands).cloned().collect()
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
