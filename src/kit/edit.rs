//! Changes to a kit as values: applied, undone, and carried by findings as their fix.
//!
//! One change replaces, adds or removes one whole item; items are small, so that is simple and cheap, and the
//! inverse is exact. [`apply`] is the only place where the program changes a kit.

use serde::{Deserialize, Serialize};

use super::{
    Apart, BoxDef, Dressed, Finish, Kit, Letter, Levels, Lock, Look, Making, Note, OwnStep, Plays, Prop, Puzzle,
    Revision, Spot, WordForms,
};
use crate::ids::{BoxId, KitId, LockId, NoteId, PropId, PuzzleId, SpotId, ThemeId};

/// The facts on a kit's first lines.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Facts {
    /// See [`Kit::id`].
    pub id: KitId,
    /// See [`Kit::title`].
    pub title: String,
    /// See [`Kit::author`].
    pub author: String,
    /// See [`Kit::terms`].
    pub terms: String,
    /// See [`Kit::theme`].
    pub theme: ThemeId,
    /// See [`Kit::players`].
    pub players: (u8, u8),
    /// See [`Kit::ages`].
    pub ages: (u8, u8),
    /// See [`Kit::minutes`].
    pub minutes: u16,
    /// See [`Kit::prep_minutes`].
    #[serde(default)]
    pub prep_minutes: Option<u32>,
    /// See [`Kit::seed`].
    pub seed: u64,
    /// See [`Kit::brief`].
    pub brief: String,
    /// See [`Kit::cost`].
    #[serde(default)]
    pub cost: String,
    /// See [`Kit::revision`].
    #[serde(default)]
    pub revision: Revision,
    /// See [`Kit::opening`].
    #[serde(default)]
    pub opening: Vec<String>,
    /// See [`Kit::preparation`].
    #[serde(default)]
    pub preparation: Vec<OwnStep>,
}

impl Facts {
    /// The facts of `kit` as they stand.
    #[must_use]
    pub fn of(kit: &Kit) -> Self {
        Self {
            id: kit.id.clone(),
            title: kit.title.clone(),
            author: kit.author.clone(),
            terms: kit.terms.clone(),
            theme: kit.theme.clone(),
            players: kit.players,
            ages: kit.ages,
            minutes: kit.minutes,
            prep_minutes: kit.prep_minutes,
            seed: kit.seed,
            brief: kit.brief.clone(),
            cost: kit.cost.clone(),
            revision: kit.revision.clone(),
            opening: kit.opening.clone(),
            preparation: kit.preparation.clone(),
        }
    }

    fn put(self, kit: &mut Kit) {
        let Self {
            id,
            title,
            author,
            terms,
            theme,
            players,
            ages,
            minutes,
            prep_minutes,
            seed,
            brief,
            cost,
            revision,
            opening,
            preparation,
        } = self;
        kit.id = id;
        kit.title = title;
        kit.author = author;
        kit.terms = terms;
        kit.theme = theme;
        kit.players = players;
        kit.ages = ages;
        kit.minutes = minutes;
        kit.prep_minutes = prep_minutes;
        kit.seed = seed;
        kit.brief = brief;
        kit.cost = cost;
        kit.revision = revision;
        kit.opening = opening;
        kit.preparation = preparation;
    }
}

/// One change to a kit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Edit {
    /// Sets title, author, theme and the like.
    Facts(Box<Facts>),
    /// Sets the letter.
    Letter(Box<Letter>),
    /// Sets what the end of the party is.
    Finish(Box<Finish>),
    /// Sets the kit's changes to the look.
    Look(Box<Look>),
    /// Sets the rules of the play levels.
    Levels(Box<Levels>),
    /// Sets how the printed pieces are made.
    Making(Box<Making>),
    /// Sets the plays that were written down.
    Plays(Box<Plays>),
    /// Sets which things must lie apart.
    Apart(Vec<Apart>),
    /// Sets the credit of a picture or font, or removes it.
    Credit(String, Option<String>),
    /// Sets what the kit brought along from the theme before.
    Dressed(Box<Dressed>),
    /// Sets a word, or removes it.
    Word(String, Option<WordForms>),
    /// Replaces the item with the same id, or adds it at the end.
    Note(Box<Note>),
    /// As `Note`.
    Spot(Box<Spot>),
    /// As `Note`.
    Box(Box<BoxDef>),
    /// As `Note`.
    Lock(Box<Lock>),
    /// As `Note`.
    Prop(Box<Prop>),
    /// As `Note`.
    Puzzle(Box<Puzzle>),
    /// Gives the item with this id, of several the one with this number from 0, another id; what refers to it stays.
    Id(Item, usize, String),
    /// Removes an item; what refers to it becomes a finding.
    Remove(Item),
    /// Puts an item back where it stood; the inverse of `Remove`.
    Insert(usize, Box<Edit>),
}

/// An item of a kit by its id.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Item {
    /// A smaller text.
    Note(NoteId),
    /// A spot.
    Spot(SpotId),
    /// A box.
    Box(BoxId),
    /// A lock.
    Lock(LockId),
    /// A prop.
    Prop(PropId),
    /// A puzzle.
    Puzzle(PuzzleId),
}

impl Item {
    /// An item of the same kind with this id; none when it cannot be an id.
    #[must_use]
    pub fn with_id(&self, id: &str) -> Option<Self> {
        Some(match self {
            Self::Note(_) => Self::Note(NoteId::new(id)?),
            Self::Spot(_) => Self::Spot(SpotId::new(id)?),
            Self::Box(_) => Self::Box(BoxId::new(id)?),
            Self::Lock(_) => Self::Lock(LockId::new(id)?),
            Self::Prop(_) => Self::Prop(PropId::new(id)?),
            Self::Puzzle(_) => Self::Puzzle(PuzzleId::new(id)?),
        })
    }

    /// Its id.
    #[must_use]
    pub fn id(&self) -> &str {
        match self {
            Self::Note(id) => id.as_str(),
            Self::Spot(id) => id.as_str(),
            Self::Box(id) => id.as_str(),
            Self::Lock(id) => id.as_str(),
            Self::Prop(id) => id.as_str(),
            Self::Puzzle(id) => id.as_str(),
        }
    }
}

/// Applies `edit` and answers the edit that takes it back; none when nothing changed.
pub fn apply(kit: &mut Kit, edit: Edit) -> Option<Edit> {
    macro_rules! swap {
        ($field:ident, $new:expr, $variant:ident) => {{
            let new = *$new;
            (kit.$field != new).then(|| Edit::$variant(Box::new(std::mem::replace(&mut kit.$field, new))))
        }};
    }
    macro_rules! put {
        ($list:ident, $new:expr, $variant:ident) => {{
            let new = *$new;
            match kit.$list.iter_mut().find(|item| item.id == new.id) {
                Some(old) if *old == new => None,
                Some(old) => Some(Edit::$variant(Box::new(std::mem::replace(old, new)))),
                None => {
                    let id = new.id.clone();
                    kit.$list.push(new);
                    Some(Edit::Remove(Item::$variant(id)))
                }
            }
        }};
    }
    macro_rules! remove {
        ($list:ident, $id:expr, $variant:ident) => {{
            let at = kit.$list.iter().position(|item| item.id == $id)?;
            Some(Edit::Insert(at, Box::new(Edit::$variant(Box::new(kit.$list.remove(at))))))
        }};
    }
    macro_rules! insert {
        ($list:ident, $at:expr, $item:expr, $variant:ident) => {{
            let item = *$item;
            let id = item.id.clone();
            if kit.$list.iter().any(|old| old.id == id) {
                return apply(kit, Edit::$variant(Box::new(item)));
            }
            kit.$list.insert($at.min(kit.$list.len()), item);
            Some(Edit::Remove(Item::$variant(id)))
        }};
    }
    macro_rules! id {
        ($list:ident, $old:expr, $nth:expr, $new:expr, $id:ident, $variant:ident) => {{
            let new = $id::new(&$new).filter(|new| *new != $old)?;
            let (at, item) = kit.$list.iter_mut().enumerate().filter(|(_, item)| item.id == $old).nth($nth)?;
            item.id = new.clone();
            let before = kit.$list.iter().take(at).filter(|item| item.id == new).count();
            Some(Edit::Id(Item::$variant(new), before, $old.to_string()))
        }};
    }
    match edit {
        Edit::Id(Item::Note(old), nth, new) => id!(notes, old, nth, new, NoteId, Note),
        Edit::Id(Item::Spot(old), nth, new) => id!(spots, old, nth, new, SpotId, Spot),
        Edit::Id(Item::Box(old), nth, new) => id!(boxes, old, nth, new, BoxId, Box),
        Edit::Id(Item::Lock(old), nth, new) => id!(locks, old, nth, new, LockId, Lock),
        Edit::Id(Item::Prop(old), nth, new) => id!(props, old, nth, new, PropId, Prop),
        Edit::Id(Item::Puzzle(old), nth, new) => id!(puzzles, old, nth, new, PuzzleId, Puzzle),
        Edit::Facts(new) => {
            let old = Facts::of(kit);
            (old != *new).then(|| {
                new.put(kit);
                Edit::Facts(Box::new(old))
            })
        }
        Edit::Letter(new) => swap!(letter, new, Letter),
        Edit::Finish(new) => swap!(finish, new, Finish),
        Edit::Look(new) => swap!(look, new, Look),
        Edit::Levels(new) => swap!(levels, new, Levels),
        Edit::Making(new) => swap!(making, new, Making),
        Edit::Plays(new) => swap!(plays, new, Plays),
        Edit::Apart(new) => (kit.apart != new).then(|| Edit::Apart(std::mem::replace(&mut kit.apart, new))),
        Edit::Credit(name, new) => {
            let old = match new.clone() {
                Some(credit) => kit.credits.insert(name.clone(), credit),
                None => kit.credits.remove(&name),
            };
            (old != new).then_some(Edit::Credit(name, old))
        }
        Edit::Dressed(new) => swap!(dressed, new, Dressed),
        Edit::Word(name, new) => {
            let old = match new.clone() {
                Some(forms) => kit.words.insert(name.clone(), forms),
                None => kit.words.remove(&name),
            };
            (old != new).then_some(Edit::Word(name, old))
        }
        Edit::Note(new) => put!(notes, new, Note),
        Edit::Spot(new) => put!(spots, new, Spot),
        Edit::Box(new) => put!(boxes, new, Box),
        Edit::Lock(new) => put!(locks, new, Lock),
        Edit::Prop(new) => put!(props, new, Prop),
        Edit::Puzzle(new) => put!(puzzles, new, Puzzle),
        Edit::Remove(Item::Note(id)) => remove!(notes, id, Note),
        Edit::Remove(Item::Spot(id)) => remove!(spots, id, Spot),
        Edit::Remove(Item::Box(id)) => remove!(boxes, id, Box),
        Edit::Remove(Item::Lock(id)) => remove!(locks, id, Lock),
        Edit::Remove(Item::Prop(id)) => remove!(props, id, Prop),
        Edit::Remove(Item::Puzzle(id)) => remove!(puzzles, id, Puzzle),
        Edit::Insert(at, inner) => match *inner {
            Edit::Note(item) => insert!(notes, at, item, Note),
            Edit::Spot(item) => insert!(spots, at, item, Spot),
            Edit::Box(item) => insert!(boxes, at, item, Box),
            Edit::Lock(item) => insert!(locks, at, item, Lock),
            Edit::Prop(item) => insert!(props, at, item, Prop),
            Edit::Puzzle(item) => insert!(puzzles, at, item, Puzzle),
            other => apply(kit, other),
        },
    }
}

/// Applies a list of edits as one step and answers the list that takes them back, in the order to apply it.
pub fn apply_all(kit: &mut Kit, edits: Vec<Edit>) -> Vec<Edit> {
    let mut back: Vec<Edit> = edits.into_iter().filter_map(|edit| apply(kit, edit)).collect();
    back.reverse();
    back
}

/// The edits that make `new` of `old`, where both have the same items: one step of undo for a change all over the kit.
/// Items that only one of them has are left as they are.
#[must_use]
pub fn between(old: &Kit, new: &Kit) -> Vec<Edit> {
    let mut edits = Vec::new();
    let facts = Facts::of(new);
    if Facts::of(old) != facts {
        edits.push(Edit::Facts(Box::new(facts)));
    }
    macro_rules! whole {
        ($($field:ident, $variant:ident;)*) => {$(
            if old.$field != new.$field {
                edits.push(Edit::$variant(Box::new(new.$field.clone())));
            }
        )*};
    }
    macro_rules! lists {
        ($($list:ident, $variant:ident;)*) => {$(
            for item in &new.$list {
                if old.$list.iter().any(|known| known.id == item.id && known != item) {
                    edits.push(Edit::$variant(Box::new(item.clone())));
                }
            }
        )*};
    }
    whole! { letter, Letter; finish, Finish; look, Look; levels, Levels; making, Making; plays, Plays; dressed, Dressed; }
    lists! { notes, Note; spots, Spot; boxes, Box; locks, Lock; props, Prop; puzzles, Puzzle; }
    if old.apart != new.apart {
        edits.push(Edit::Apart(new.apart.clone()));
    }
    for name in old.credits.keys().chain(new.credits.keys()) {
        if old.credits.get(name) != new.credits.get(name) {
            edits.push(Edit::Credit(name.clone(), new.credits.get(name).cloned()));
        }
    }
    for (name, forms) in &new.words {
        if old.words.get(name) != Some(forms) {
            edits.push(Edit::Word(name.clone(), Some(forms.clone())));
        }
    }
    for name in old.words.keys().filter(|name| !new.words.contains_key(*name)) {
        edits.push(Edit::Word(name.clone(), None));
    }
    edits
}
