//! Changes to a theme's file as values: applied, and taken back.
//!
//! One change sets one entry, so that what another program has changed elsewhere in the file stays when a step is taken
//! back.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Theme;
use crate::files::VPath;
use crate::kit::WordForms;

/// Which pictures of a theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum PictureKind {
    /// A frame: the ground of a piece, with slots for its words.
    Frame,
    /// An ornament: divider, corner, seal.
    Ornament,
    /// A symbol: the mark of a lock, a picture of a legend.
    Symbol,
}

impl PictureKind {
    /// All kinds.
    pub const ALL: [Self; 3] = [Self::Frame, Self::Ornament, Self::Symbol];

    /// In a word: "frame".
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Frame => "frame",
            Self::Ornament => "ornament",
            Self::Symbol => "symbol",
        }
    }

    /// The pictures of this kind.
    #[must_use]
    pub const fn of(self, theme: &Theme) -> &BTreeMap<String, VPath> {
        match self {
            Self::Frame => &theme.frames,
            Self::Ornament => &theme.ornaments,
            Self::Symbol => &theme.symbols,
        }
    }

    const fn of_mut(self, theme: &mut Theme) -> &mut BTreeMap<String, VPath> {
        match self {
            Self::Frame => &mut theme.frames,
            Self::Ornament => &mut theme.ornaments,
            Self::Symbol => &mut theme.symbols,
        }
    }
}

/// One change to a theme. With none an entry is taken out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum ThemeEdit {
    /// The name as shown.
    Name(String),
    /// The season and mood in a sentence.
    About(String),
    /// Who made it, under which licence.
    Credit(String),
    /// The colour of a role, as `#RRGGBB`.
    Role(String, Option<String>),
    /// The font family of a lettering role.
    Family(String, Option<String>),
    /// A telling colour, by the name that guests read.
    Colour(String, Option<String>),
    /// A picture.
    Picture(PictureKind, String, Option<VPath>),
    /// A word.
    Word(String, Option<WordForms>),
    /// The further words of the season.
    SeasonWords(Vec<String>),
    /// The languages that the lettering must write.
    Languages(Vec<String>),
    /// What a part of a mechanic is called.
    Dressing(String, String, Option<String>),
}

impl ThemeEdit {
    /// Whether the other sets the same entry, so that of two of them only one need be kept.
    #[must_use]
    pub fn same_entry(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Name(_), Self::Name(_))
            | (Self::About(_), Self::About(_))
            | (Self::Credit(_), Self::Credit(_))
            | (Self::SeasonWords(_), Self::SeasonWords(_))
            | (Self::Languages(_), Self::Languages(_)) => true,
            (Self::Role(a, _), Self::Role(b, _))
            | (Self::Family(a, _), Self::Family(b, _))
            | (Self::Colour(a, _), Self::Colour(b, _)) => a == b,
            (Self::Word(a, _), Self::Word(b, _)) => a == b,
            (Self::Picture(a, x, _), Self::Picture(b, y, _)) => (a, x) == (b, y),
            (Self::Dressing(a, x, _), Self::Dressing(b, y, _)) => (a, x) == (b, y),
            _ => false,
        }
    }
}

/// Applies a change and answers the one that takes it back; none when nothing changed.
pub fn edit(theme: &mut Theme, change: ThemeEdit) -> Option<ThemeEdit> {
    fn swap<T: PartialEq>(old: &mut T, new: T) -> Option<T> {
        (*old != new).then(|| std::mem::replace(old, new))
    }
    fn entry<T: PartialEq>(map: &mut BTreeMap<String, T>, key: &str, new: Option<T>) -> Option<Option<T>> {
        match new {
            Some(new) if map.get(key) == Some(&new) => None,
            Some(new) => Some(map.insert(key.to_owned(), new)),
            None => map.remove(key).map(Some),
        }
    }
    use ThemeEdit as E;
    match change {
        E::Name(new) => swap(&mut theme.name, new).map(E::Name),
        E::About(new) => swap(&mut theme.about, new).map(E::About),
        E::Credit(new) => swap(&mut theme.credit, new).map(E::Credit),
        E::SeasonWords(new) => swap(&mut theme.season_words, new).map(E::SeasonWords),
        E::Languages(new) => swap(&mut theme.languages, new).map(E::Languages),
        E::Role(key, new) => entry(&mut theme.palette, &key, new).map(|old| E::Role(key, old)),
        E::Family(key, new) => entry(&mut theme.lettering, &key, new).map(|old| E::Family(key, old)),
        E::Colour(key, new) => entry(&mut theme.colours, &key, new).map(|old| E::Colour(key, old)),
        E::Word(key, new) => entry(&mut theme.words, &key, new).map(|old| E::Word(key, old)),
        E::Picture(kind, key, new) => entry(kind.of_mut(theme), &key, new).map(|old| E::Picture(kind, key, old)),
        E::Dressing(mechanic, part, new) => {
            let parts = theme.dressings.entry(mechanic.clone()).or_default();
            let old = entry(parts, &part, new);
            if parts.is_empty() {
                theme.dressings.remove(&mechanic);
            }
            old.map(|old| E::Dressing(mechanic, part, old))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ids::ThemeId;
    use crate::theme::load_builtin;

    #[test]
    fn every_change_is_taken_back() {
        let before = load_builtin(&ThemeId::new("plain").unwrap()).unwrap().theme;
        let text = || "new".to_owned();
        let path = VPath::new("art/other.svg").unwrap();
        let changes = [
            ThemeEdit::Name(text()),
            ThemeEdit::About(text()),
            ThemeEdit::Credit(text()),
            ThemeEdit::Role("ink".into(), Some("#010203".into())),
            ThemeEdit::Role("ink".into(), None),
            ThemeEdit::Family("hand".into(), Some(text())),
            ThemeEdit::Colour("puce".into(), Some("#CC8899".into())),
            ThemeEdit::Picture(PictureKind::Frame, "token".into(), Some(path.clone())),
            ThemeEdit::Picture(PictureKind::Ornament, "seal".into(), None),
            ThemeEdit::Picture(PictureKind::Symbol, "anvil".into(), Some(path)),
            ThemeEdit::Word("anvil".into(), Some(WordForms { one: text(), ..WordForms::default() })),
            ThemeEdit::SeasonWords(vec![text()]),
            ThemeEdit::Languages(vec!["de".into()]),
            ThemeEdit::Dressing("letter-key".into(), "key-card".into(), Some(text())),
            ThemeEdit::Dressing("no-such".into(), "part".into(), Some(text())),
            ThemeEdit::Dressing("letter-key".into(), "key-card".into(), None),
        ];
        for change in changes {
            let mut theme = before.clone();
            let back = edit(&mut theme, change.clone()).unwrap_or_else(|| panic!("{change:?} changed nothing"));
            assert!(back.same_entry(&change));
            assert_ne!(theme, before);
            assert!(edit(&mut theme, change).is_none());
            assert!(edit(&mut theme, back).is_some());
            assert_eq!(theme, before);
        }
    }
}
