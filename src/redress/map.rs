use std::collections::{BTreeMap, BTreeSet};

use crate::diag::{Hinted, Trouble};
use crate::kit::ron_text::{Literal, literals, splice};
use crate::kit::{Kit, LevelChange, RawSetup};
use crate::theme::{Colour, Theme};

/// Fields of setups that name symbols of the theme.
pub(super) const SYMBOL_FIELDS: &[&str] = &[
    "sign", "signs", "picture", "pictures", "symbol", "symbols", "kinds", "goal", "start", "waymark", "count", "others",
];
/// Fields of setups that name telling colours of the theme.
pub(super) const COLOUR_FIELDS: &[&str] = &["bands", "other_bands", "colour", "colours"];

/// Names exchanged: old to new.
type Names = BTreeMap<String, String>;

/// Which symbol stands for which: those that both themes draw stay; one that is a word of the old theme becomes what
/// the new theme says for it, if it draws that; the others are paired off by name.
pub(super) fn symbols(kit: &Kit, old: &Theme, new: &Theme, known: Names) -> (Names, Vec<Trouble>) {
    let used = symbols_used(kit, old);
    let mut names = Pairs::new(&used, known, |name| new.symbols.contains_key(name));
    for (slot, forms) in &old.words {
        let Some(theirs) = new.words.get(slot) else { continue };
        if new.symbols.contains_key(&theirs.one) {
            names.pair(&forms.one, &theirs.one);
        }
    }
    // First those that the old theme does not have at all, so that a name that both have keeps its meaning.
    let fresh = new.symbols.keys().filter(|name| !old.symbols.contains_key(*name));
    let spare: Vec<&String> = fresh.chain(new.symbols.keys().filter(|name| old.symbols.contains_key(*name))).collect();
    names.pair_off(&spare);
    let troubles = if names.left.is_empty() {
        Vec::new()
    } else {
        let trouble = Trouble::new(too_few_symbols(new, used.len())).at("symbols");
        vec![trouble.hint("or use fewer symbols in this kit")]
    };
    (names.done, troubles)
}

/// That a theme has fewer symbols than a kit uses, in a sentence.
#[must_use]
pub fn too_few_symbols(theme: &Theme, used: usize) -> String {
    let has = theme.symbols.len();
    format!("this kit uses {used} symbols, the theme {} has {has}: draw {} more", theme.name, used.saturating_sub(has))
}

/// The symbols of a theme that a kit uses: in setups, and as marks of locks.
#[must_use]
pub fn symbols_used(kit: &Kit, theme: &Theme) -> BTreeSet<String> {
    let mut used = used(kit, SYMBOL_FIELDS, |name| theme.symbols.contains_key(name));
    used.extend(kit.locks.iter().map(|lock| lock.mark.clone()).filter(|mark| theme.symbols.contains_key(mark)));
    used
}

/// Whether the author's choice of symbols can be had: each old name to a new one.
///
/// # Errors
/// When the kit does not use an old one, the new theme does not draw a new one, or two would be one.
pub(super) fn check_choice(kit: &Kit, old: &Theme, new: &Theme, choice: &Names) -> Hinted<()> {
    let used = symbols_used(kit, old);
    let list = |names: &mut dyn Iterator<Item = &String>| names.map(String::as_str).collect::<Vec<_>>().join(", ");
    let mut taken = BTreeSet::new();
    for (from, to) in choice {
        let trouble = |words: String| Err(Trouble::new(words).at(format!("{from}={to}")));
        if !used.contains(from) {
            return trouble(format!("the kit uses no symbol `{from}`"))
                .map_err(|trouble| trouble.hint(format!("it uses {}", list(&mut used.iter()))));
        }
        if !new.symbols.contains_key(to) {
            return trouble(format!("the theme {} has no symbol `{to}`", new.name))
                .map_err(|trouble| trouble.hint(format!("it has {}", list(&mut new.symbols.keys()))));
        }
        if from != to && used.contains(to) {
            return trouble(format!("`{to}` keeps its own name, because both themes draw it"))
                .map_err(|trouble| trouble.hint("choose one that the kit does not use yet"));
        }
        if !taken.insert(to) {
            return trouble(format!("`{to}` is chosen twice")).map_err(|trouble| trouble.hint("choose another"));
        }
    }
    Ok(())
}

/// Which telling colour stands for which: those that both themes have stay, the others keep their order from light to
/// dark.
pub(super) fn colours(kit: &Kit, old: &Theme, new: &Theme, known: Names) -> (Names, Vec<Trouble>) {
    let used = used(kit, COLOUR_FIELDS, |name| old.colours.contains_key(name));
    let mut names = Pairs::new(&used, known, |name| new.colours.contains_key(name));
    let light = |theme: &Theme, name: &String| {
        theme.colours.get(name).and_then(|hex| Colour::parse(hex)).map_or(0.0, Colour::luminance)
    };
    // The lightest that is left takes whichever free colour is nearest in lightness.
    let mut left: Vec<String> = names.left.iter().cloned().collect();
    left.sort_by(|a, b| light(old, b).total_cmp(&light(old, a)));
    for name in left {
        let free = new.colours.keys().filter(|colour| !names.taken.contains(*colour));
        let wanted = light(old, &name);
        let nearest = free.min_by(|a, b| (light(new, a) - wanted).abs().total_cmp(&(light(new, b) - wanted).abs()));
        if let Some(nearest) = nearest.cloned() {
            names.pair(&name, &nearest);
        }
    }
    let troubles = names.left.iter().map(|name| {
        Trouble::new(format!("the theme {} has no telling colour left for {name}", new.name))
            .at("colours")
            .hint("use fewer colours in this kit, or add one to `colours` of the theme")
    });
    let troubles = troubles.collect();
    (names.done, troubles)
}

/// Names of one theme paired with names of another, no two with the same.
struct Pairs {
    done: Names,
    left: BTreeSet<String>,
    taken: BTreeSet<String>,
}

impl Pairs {
    fn new(used: &BTreeSet<String>, known: Names, stays: impl Fn(&str) -> bool) -> Self {
        let mut pairs = Self { done: BTreeMap::new(), left: used.clone(), taken: BTreeSet::new() };
        for (old, new) in known {
            if stays(&new) {
                pairs.pair(&old, &new);
            }
        }
        let same: Vec<String> =
            pairs.left.iter().filter(|name| stays(name) && !pairs.taken.contains(*name)).cloned().collect();
        for name in same {
            pairs.left.remove(&name);
            pairs.taken.insert(name);
        }
        pairs
    }

    fn pair(&mut self, old: &str, new: &str) {
        if self.left.contains(old) && !self.taken.contains(new) {
            self.left.remove(old);
            self.taken.insert(new.to_owned());
            if old != new {
                self.done.insert(old.to_owned(), new.to_owned());
            }
        }
    }

    fn pair_off(&mut self, spare: &[&String]) {
        for old in self.left.clone() {
            if let Some(new) = spare.iter().find(|name| !self.taken.contains(**name)) {
                self.pair(&old, new);
            }
        }
    }
}

/// The names that the setups of a kit use in some fields.
fn used(kit: &Kit, fields: &[&str], is_name: impl Fn(&str) -> bool) -> BTreeSet<String> {
    let setups = kit.puzzles.iter().flat_map(|puzzle| {
        let changes = [&puzzle.gentle, &puzzle.stiff].into_iter().flatten();
        std::iter::once(&puzzle.setup).chain(changes.filter_map(|change| change.setup.as_ref()))
    });
    setups
        .flat_map(|setup| literals(setup.ron()))
        .filter(|literal| fields.contains(&literal.field.as_str()) && is_name(&literal.text))
        .map(|literal| literal.text)
        .collect()
}

/// Exchanges the names in marks and setups. A new name may be another's old one: each is exchanged once.
pub(super) fn exchange(kit: &mut Kit, symbols: &Names, colours: &Names) {
    for lock in &mut kit.locks {
        if let Some(new) = symbols.get(&lock.mark) {
            lock.mark.clone_from(new);
        }
    }
    let new_name = |literal: &Literal| {
        let names = match literal.field.as_str() {
            field if SYMBOL_FIELDS.contains(&field) => symbols,
            field if COLOUR_FIELDS.contains(&field) => colours,
            _ => return None,
        };
        names.get(&literal.text).cloned()
    };
    let exchange = |setup: &mut RawSetup| {
        let found = literals(setup.ron()).into_iter();
        let changed: Vec<(Literal, String)> =
            found.filter_map(|literal| Some((literal.clone(), new_name(&literal)?))).collect();
        if !changed.is_empty()
            && let Ok(fresh) = RawSetup::new(&splice(setup.ron(), &changed))
        {
            *setup = fresh;
        }
    };
    for puzzle in &mut kit.puzzles {
        exchange(&mut puzzle.setup);
        for change in [&mut puzzle.gentle, &mut puzzle.stiff].into_iter().flatten() {
            let LevelChange { setup, .. } = change;
            setup.iter_mut().for_each(exchange);
        }
    }
}
