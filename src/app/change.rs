use crate::app::session::Selection;
use crate::ids::ThemeId;
use crate::kit::edit::Edit;
use crate::theme::ThemeEdit;

/// One change to what the author has open: to the kit, or to a theme of the kit's own.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// To the kit.
    Kit(Edit),
    /// To the file of a theme.
    Theme(ThemeId, ThemeEdit),
}

/// What changes are made to.
pub trait Target {
    /// Makes a change and answers the one that takes it back; none when nothing changed.
    fn apply(&mut self, change: Change) -> Option<Change>;
}

/// Makes a list of changes as one step and answers the list that takes them back, in the order to apply it.
pub fn apply_all(target: &mut impl Target, changes: Vec<Change>) -> Vec<Change> {
    let mut back: Vec<Change> = changes.into_iter().filter_map(|change| target.apply(change)).collect();
    back.reverse();
    back
}

impl Change {
    /// Where it shows, if at one place; what is removed shows nowhere.
    #[must_use]
    pub fn shows_at(&self) -> Option<Selection> {
        match self {
            Self::Kit(edit) => shows_at(edit),
            Self::Theme(..) => Some(Selection::Theme),
        }
    }

    /// Whether `self`, made after `newer`, leaves nothing of it: both set the same thing whole. Such a `newer` need not
    /// be kept, so typing a page into one field does not keep a copy of the page for each letter.
    #[must_use]
    pub fn covers(&self, newer: &Self) -> bool {
        match (self, newer) {
            (Self::Kit(older), Self::Kit(newer)) => covers(older, newer),
            (Self::Theme(a, older), Self::Theme(b, newer)) => a == b && older.same_entry(newer),
            _ => false,
        }
    }
}

fn shows_at(edit: &Edit) -> Option<Selection> {
    Some(match edit {
        Edit::Facts(_) | Edit::Credit(..) => Selection::Facts,
        Edit::Letter(_) => Selection::Letter,
        Edit::Finish(_) => Selection::Finish,
        Edit::Look(_) => Selection::Palette,
        Edit::Levels(_) => Selection::Levels,
        Edit::Making(_) => Selection::Bundle,
        Edit::Plays(_) => Selection::Plays,
        Edit::Apart(_) => Selection::Drawn,
        Edit::Word(..) => Selection::Words,
        Edit::Note(note) => Selection::Note(note.id.clone()),
        Edit::Spot(spot) => Selection::Spot(spot.id.clone()),
        Edit::Box(item) => Selection::Box(item.id.clone()),
        Edit::Lock(lock) => Selection::Lock(lock.id.clone()),
        Edit::Prop(prop) => Selection::Prop(prop.id.clone()),
        Edit::Puzzle(puzzle) => Selection::Puzzle(puzzle.id.clone()),
        Edit::Insert(_, edit) => return shows_at(edit),
        Edit::Dressed(_) | Edit::Id(..) | Edit::Remove(_) => return None,
    })
}

fn covers(older: &Edit, newer: &Edit) -> bool {
    match (older, newer) {
        (Edit::Facts(_), Edit::Facts(_))
        | (Edit::Letter(_), Edit::Letter(_))
        | (Edit::Finish(_), Edit::Finish(_))
        | (Edit::Look(_), Edit::Look(_))
        | (Edit::Levels(_), Edit::Levels(_))
        | (Edit::Making(_), Edit::Making(_)) => true,
        (Edit::Word(a, _), Edit::Word(b, _)) => a == b,
        (Edit::Note(a), Edit::Note(b)) => a.id == b.id,
        (Edit::Spot(a), Edit::Spot(b)) => a.id == b.id,
        (Edit::Box(a), Edit::Box(b)) => a.id == b.id,
        (Edit::Lock(a), Edit::Lock(b)) => a.id == b.id,
        (Edit::Prop(a), Edit::Prop(b)) => a.id == b.id,
        (Edit::Puzzle(a), Edit::Puzzle(b)) => a.id == b.id,
        _ => false,
    }
}
