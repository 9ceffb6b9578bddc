//! A kit put into another theme: its look, its words and what its setups name change; what the old season left behind
//! in the author's own text is found, and mended one by one or all at once.
//!
//! Nothing that the author wrote is changed by [`redress`] itself: slots fill with the new theme's words, and symbols and
//! telling colours that setups name are exchanged for those of the new theme. Back in the theme before, the kit is as it
//! was.

mod leftovers;
mod map;
mod mend;
mod phrase;
mod sense;

pub use leftovers::{Leftover, leftovers, old_pictures};
pub use map::{symbols_used, too_few_symbols};
pub use mend::{Mend, Mended, keep_everywhere, keep_picture, make_slot, mend, mend_all, standing};

use std::collections::BTreeMap;

use crate::diag::{Hinted, Trouble};
use crate::kit::{Dressed, Kit, OldWord};
use crate::script::same_word;
use crate::theme::Theme;

/// A kit in its new theme.
#[derive(Clone, Debug)]
pub struct Redressed {
    /// The kit.
    pub kit: Kit,
    /// What could not be taken over, and what to do about it.
    pub troubles: Vec<Trouble>,
}

/// Puts `kit`, which wears `old`, into `new`. The same kit and themes give the same result.
#[must_use]
pub fn redress(kit: &Kit, old: &Theme, new: &Theme) -> Redressed {
    dressed(kit, old, new, &BTreeMap::new())
}

/// As [`redress`], with the author's own choice of symbols: old names to new. The others are paired off as ever.
///
/// # Errors
/// When the kit does not use an old one, the new theme does not draw a new one, or two would be one.
pub fn redress_as(kit: &Kit, old: &Theme, new: &Theme, choice: &BTreeMap<String, String>) -> Hinted<Redressed> {
    map::check_choice(kit, old, new, choice)?;
    Ok(dressed(kit, old, new, choice))
}

fn dressed(kit: &Kit, old: &Theme, new: &Theme, choice: &BTreeMap<String, String>) -> Redressed {
    let mut fresh = kit.clone();
    if old.id == new.id {
        return Redressed { kit: fresh, troubles: Vec::new() };
    }
    let returns = kit.dressed.from.as_ref() == Some(&new.id);
    let back = |pairs: &BTreeMap<String, String>| -> BTreeMap<String, String> {
        let known = if returns { pairs.clone() } else { BTreeMap::new() };
        known.into_iter().map(|(old, new)| (new, old)).collect()
    };
    let mut known = back(&kit.dressed.symbols);
    // What the author chose goes before what was there.
    known.retain(|old, new| !choice.contains_key(old) && !choice.values().any(|chosen| chosen == new));
    known.extend(choice.clone());
    let (symbols, mut troubles) = map::symbols(kit, old, new, known);
    let (colours, more) = map::colours(kit, old, new, back(&kit.dressed.colours));
    troubles.extend(more);
    map::exchange(&mut fresh, &symbols, &colours);
    fresh.theme = new.id.clone();
    fresh.look = if returns { kit.dressed.look.clone() } else { Default::default() };
    let mut old_pictures = kit.dressed.old_pictures.clone();
    old_pictures.extend(kit.notes.iter().filter_map(|note| note.picture.clone()));
    old_pictures.sort();
    old_pictures.dedup();
    fresh.dressed = Dressed {
        from: Some(old.id.clone()),
        look: kit.look.clone(),
        old_words: old_words(kit, old, new, &symbols, &colours),
        symbols,
        colours,
        old_pictures: if returns { Vec::new() } else { old_pictures },
        kept: kit.dressed.kept.clone(),
        old_hints: kit.dressed.old_hints.clone(),
    };
    Redressed { kit: fresh, troubles }
}

/// The words that the kit should no longer say: the old theme's own, those of its season, the names of symbols and
/// colours that were exchanged, and what is left from themes before, without what the new theme says as well. A word that
/// is the name of something exchanged carries its new name, beside the slot that it may have filled.
fn old_words(
    kit: &Kit,
    old: &Theme,
    new: &Theme,
    symbols: &BTreeMap<String, String>,
    colours: &BTreeMap<String, String>,
) -> Vec<OldWord> {
    let mut words: Vec<OldWord> = Vec::new();
    for (slot, forms) in &old.words {
        // A word of the kit's own stays with the kit.
        if !kit.words.contains_key(slot) {
            let filled = new.words.contains_key(slot);
            words.push(OldWord {
                one: forms.one.clone(),
                many: forms.many.clone(),
                slot: if filled { slot.clone() } else { String::new() },
                now: String::new(),
                theme: Some(old.id.clone()),
            });
        }
    }
    let plain = |one: &String, now: &str| OldWord {
        one: one.clone(),
        now: now.to_owned(),
        theme: Some(old.id.clone()),
        ..OldWord::default()
    };
    words.extend(symbols.iter().chain(colours).map(|(one, now)| plain(one, now)));
    words.extend(old.season_words.iter().map(|one| plain(one, "")));
    let before = kit.dressed.old_words.iter().filter(|word| word.theme.as_ref() != Some(&new.id)).cloned();
    // What took its place may have been exchanged again.
    words.extend(before.map(|word| {
        let now = symbols.get(&word.now).or_else(|| colours.get(&word.now)).unwrap_or(&word.now).clone();
        OldWord { now, ..word }
    }));
    let said = |one: &str| {
        let theirs =
            new.words.values().map(|forms| forms.one.as_str()).chain(new.season_words.iter().map(String::as_str));
        theirs.into_iter().any(|word| same_word(word, one))
    };
    let mut kept: Vec<OldWord> = Vec::new();
    for word in words {
        if let Some(known) = kept.iter_mut().find(|known| same_word(&known.one, &word.one)) {
            if known.now.is_empty() {
                known.now = word.now;
            }
        } else if !word.now.is_empty() || !said(&word.one) {
            kept.push(word);
        }
    }
    // A slot whose word the new theme says as well is nothing old.
    kept.retain(|word| !word.now.is_empty() || !said(&word.one));
    kept
}

/// A kit that watches for what it still says of the theme that the one it wears was begun from: words and season words that
/// `now` says otherwise or no more. One step of undo, to be asked for again when more words have changed.
#[must_use]
pub fn watch_begun(kit: &Kit, begun: &Theme, now: &Theme) -> Kit {
    let mut fresh = kit.clone();
    let none = BTreeMap::new();
    let mut words = old_words(kit, begun, now, &none, &none);
    for known in &kit.dressed.old_words {
        if !words.iter().any(|word| same_word(&word.one, &known.one)) && !known.now.is_empty() {
            words.push(known.clone());
        }
    }
    fresh.dressed.old_words = words;
    fresh.dressed.from = kit.dressed.from.clone().or_else(|| Some(begun.id.clone()));
    fresh
}

/// A kit in which a symbol of the theme that it wears has another name: setups and marks of locks name it so, and texts
/// that say the old one are leftovers.
#[must_use]
pub fn rename_symbol(kit: &Kit, theme: &Theme, old: &str, new: &str) -> Kit {
    let mut fresh = kit.clone();
    if !symbols_used(kit, theme).contains(old) {
        return fresh;
    }
    let names = BTreeMap::from([(old.to_owned(), new.to_owned())]);
    map::exchange(&mut fresh, &names, &BTreeMap::new());
    let dressed = &mut fresh.dressed;
    for now in dressed.symbols.values_mut().chain(dressed.old_words.iter_mut().map(|word| &mut word.now)) {
        if now == old {
            new.clone_into(now);
        }
    }
    dressed.old_words.retain(|word| !same_word(&word.one, new));
    match dressed.old_words.iter_mut().find(|word| same_word(&word.one, old)) {
        Some(known) => new.clone_into(&mut known.now),
        None if same_word(old, new) => {}
        None => dressed.old_words.push(OldWord {
            one: old.to_owned(),
            now: new.to_owned(),
            theme: Some(theme.id.clone()),
            ..OldWord::default()
        }),
    }
    fresh
}
