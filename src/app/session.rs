use std::collections::BTreeMap;

use crate::diag::{Anchor, Level, PuzzleField};
use crate::ids::{BoxId, LockId, NoteId, PropId, PuzzleId, SpotId, ThemeId};
use crate::kit::Kit;
use crate::kit::edit::Item;
use crate::sheet::Paper;
use crate::theme::Edition;
use crate::theme::colour::Eyes;

/// The five places of the window, in the order of the job.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Tab {
    /// Letter, notes, hints.
    #[default]
    Write,
    /// Puzzles, locks, boxes, spots, props.
    Build,
    /// Look and words.
    Dress,
    /// Findings, readings, flow, rehearsal.
    Prove,
    /// Sheets, pieces, export.
    Print,
}

impl Tab {
    /// All places.
    pub const ALL: [Self; 5] = [Self::Write, Self::Build, Self::Dress, Self::Prove, Self::Print];

    /// The name shown.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Write => "Write",
            Self::Build => "Build",
            Self::Dress => "Dress",
            Self::Prove => "Prove",
            Self::Print => "Print",
        }
    }

    /// What is done there.
    #[must_use]
    pub const fn about(self) -> &'static str {
        match self {
            Self::Write => "The letter, the notes and the hints",
            Self::Build => "Puzzles, locks, boxes, spots and props",
            Self::Dress => "Palette, lettering and words",
            Self::Prove => "Findings, readings, the flow of the evening, and rehearsals",
            Self::Print => "Sheets, pieces and the bundle",
        }
    }
}

/// The thing in hand.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Selection {
    /// The story letter.
    Letter,
    /// Title, author, players.
    Facts,
    /// A smaller text.
    Note(NoteId),
    /// The hints of a puzzle.
    Hints(PuzzleId),
    /// What the play levels lay open.
    Levels,
    /// All mechanics, with the one that is looked at by its id, or none.
    Gallery(String),
    /// A puzzle.
    Puzzle(PuzzleId),
    /// A lock.
    Lock(LockId),
    /// A box.
    Box(BoxId),
    /// A spot.
    Spot(SpotId),
    /// A prop.
    Prop(PropId),
    /// How the party ends.
    Finish,
    /// The flow, drawn.
    Drawn,
    /// Which theme.
    Theme,
    /// The colours.
    Palette,
    /// The fonts.
    Lettering,
    /// The pictures of the theme.
    Pictures,
    /// The words.
    Words,
    /// What the theme calls the parts of mechanics.
    Dressings,
    /// What the season before left behind.
    Leftovers,
    /// All findings.
    Findings,
    /// The flow.
    Flow,
    /// The codes of all locks.
    Codes,
    /// The rehearsed evenings.
    Rehearsal,
    /// The plays that were written down.
    Plays,
    /// The readings of a puzzle.
    Readings(PuzzleId),
    /// The sheets.
    Sheets,
    /// The pieces one by one.
    Pieces,
    /// The bundle.
    Bundle,
}

impl Selection {
    /// The place where it is handled.
    #[must_use]
    pub const fn tab(&self) -> Tab {
        match self {
            Self::Letter | Self::Facts | Self::Note(_) | Self::Hints(_) | Self::Levels => Tab::Write,
            Self::Gallery(_)
            | Self::Puzzle(_)
            | Self::Lock(_)
            | Self::Box(_)
            | Self::Spot(_)
            | Self::Prop(_)
            | Self::Finish
            | Self::Drawn => Tab::Build,
            Self::Theme
            | Self::Palette
            | Self::Lettering
            | Self::Pictures
            | Self::Words
            | Self::Dressings
            | Self::Leftovers => Tab::Dress,
            Self::Findings | Self::Flow | Self::Codes | Self::Rehearsal | Self::Plays | Self::Readings(_) => Tab::Prove,
            Self::Sheets | Self::Pieces | Self::Bundle => Tab::Print,
        }
    }

    /// Whether the kit (still) has it.
    #[must_use]
    pub fn stands(&self, kit: &Kit) -> bool {
        match self {
            Self::Note(id) => kit.note(id).is_some(),
            Self::Hints(id) | Self::Puzzle(id) | Self::Readings(id) => kit.puzzle(id).is_some(),
            Self::Lock(id) => kit.lock(id).is_some(),
            Self::Box(id) => kit.box_def(id).is_some(),
            Self::Spot(id) => kit.spot(id).is_some(),
            Self::Prop(id) => kit.prop(id).is_some(),
            _ => true,
        }
    }

    /// The thing in which an anchor lies.
    #[must_use]
    pub fn of(anchor: &Anchor) -> Self {
        match anchor {
            Anchor::Kit | Anchor::PlayTime => Self::Facts,
            Anchor::Levels => Self::Levels,
            Anchor::Letter => Self::Letter,
            Anchor::Note(id) => Self::Note(id.clone()),
            Anchor::Puzzle(id, PuzzleField::Hint(..)) => Self::Hints(id.clone()),
            Anchor::Puzzle(id, _) => Self::Puzzle(id.clone()),
            Anchor::Lock(id) => Self::Lock(id.clone()),
            Anchor::Box(id) => Self::Box(id.clone()),
            Anchor::Spot(id) => Self::Spot(id.clone()),
            Anchor::Prop(id) => Self::Prop(id.clone()),
            Anchor::Finish => Self::Finish,
            Anchor::Word(_) => Self::Words,
            Anchor::Palette(_) => Self::Palette,
            Anchor::Theme => Self::Theme,
            Anchor::Piece(_) => Self::Pieces,
        }
    }

    /// Where the keyboard begins in it, if it is a thing with a name or a text of its own.
    #[must_use]
    pub fn anchor(&self) -> Option<Anchor> {
        Some(match self {
            Self::Note(id) => Anchor::Note(id.clone()),
            Self::Lock(id) => Anchor::Lock(id.clone()),
            Self::Box(id) => Anchor::Box(id.clone()),
            Self::Spot(id) => Anchor::Spot(id.clone()),
            Self::Prop(id) => Anchor::Prop(id.clone()),
            _ => return None,
        })
    }

    /// What handles an item.
    #[must_use]
    pub fn of_item(item: Item) -> Self {
        match item {
            Item::Note(id) => Self::Note(id),
            Item::Puzzle(id) => Self::Puzzle(id),
            Item::Lock(id) => Self::Lock(id),
            Item::Box(id) => Self::Box(id),
            Item::Spot(id) => Self::Spot(id),
            Item::Prop(id) => Self::Prop(id),
        }
    }

    /// The item of the kit that can be removed, if it is one.
    #[must_use]
    pub fn item(&self) -> Option<Item> {
        match self {
            Self::Note(id) => Some(Item::Note(id.clone())),
            Self::Puzzle(id) => Some(Item::Puzzle(id.clone())),
            Self::Lock(id) => Some(Item::Lock(id.clone())),
            Self::Box(id) => Some(Item::Box(id.clone())),
            Self::Spot(id) => Some(Item::Spot(id.clone())),
            Self::Prop(id) => Some(Item::Prop(id.clone())),
            _ => None,
        }
    }
}

/// Where the author is; neither saved nor undone.
#[derive(Clone, Debug)]
pub struct Session {
    /// The place shown.
    pub tab: Tab,
    /// The play level looked at.
    pub level: Level,
    /// The paper looked at.
    pub paper: Paper,
    /// The edition in which sheets are looked at.
    pub edition: Edition,
    /// What was in hand last, by place.
    chosen: BTreeMap<Tab, Selection>,
    /// Through whose eyes pieces and sheets are looked at.
    pub eyes: Eyes,
    /// The theme that is held beside the one worn.
    pub target: Option<ThemeId>,
    /// Symbols whose place the author gives to one of that theme's: old names to new.
    pub symbols: BTreeMap<String, String>,
    /// The lettering role for which the kit's words are shown in every font.
    pub specimens: Option<String>,
    /// Whether the kit is on its way into another theme.
    pub redressing: bool,
    /// The field to go to in the next frame.
    pub jump: Option<Anchor>,
    /// Whether codes are being looked for.
    pub proposing: bool,
}

impl Default for Session {
    fn default() -> Self {
        Self {
            tab: Tab::Write,
            level: Level::Standard,
            paper: Paper::Letter,
            edition: Edition::Colour,
            chosen: BTreeMap::new(),
            jump: None,
            proposing: false,
            eyes: Eyes::Full,
            target: None,
            symbols: BTreeMap::new(),
            specimens: None,
            redressing: false,
        }
    }
}

impl Session {
    /// What is in hand: the last choice at this place if the kit still has it, else the first thing there.
    #[must_use]
    pub fn selection(&self, kit: &Kit) -> Selection {
        if let Some(chosen) = self.chosen.get(&self.tab).filter(|chosen| chosen.stands(kit)) {
            return chosen.clone();
        }
        match self.tab {
            Tab::Write => Selection::Letter,
            Tab::Build => kit.puzzles.first().map_or(Selection::Finish, |puzzle| Selection::Puzzle(puzzle.id.clone())),
            Tab::Dress => Selection::Palette,
            Tab::Prove => Selection::Findings,
            Tab::Print => Selection::Sheets,
        }
    }

    /// Forgets what was in hand: another kit was opened. Level, paper and edition stay.
    pub fn start_over(&mut self) {
        let Self { level, paper, edition, eyes, .. } = *self;
        *self = Self { level, paper, edition, eyes, ..Self::default() };
    }

    /// Shows what was taken back or made again, at one of these places, unless it is in sight already. The drawn flow, the
    /// whole look and what is proven show every part of the kit.
    pub fn show(&mut self, kit: &Kit, places: &[Selection]) {
        let now = self.selection(kit);
        let puzzle = |at: &Selection| match at {
            Selection::Puzzle(id) | Selection::Hints(id) | Selection::Readings(id) => Some(id.clone()),
            _ => None,
        };
        let wide = now == Selection::Drawn || matches!(now.tab(), Tab::Dress | Tab::Prove);
        let in_sight = |at: &Selection| *at == now || puzzle(at).is_some_and(|id| puzzle(&now) == Some(id));
        if wide || places.iter().any(in_sight) {
            return;
        }
        if let Some(first) = places.iter().find(|at| at.stands(kit)) {
            self.select(first.clone());
        }
    }

    /// Takes a thing in hand.
    pub fn select(&mut self, selection: Selection) {
        self.tab = selection.tab();
        self.chosen.insert(self.tab, selection);
    }

    /// Goes to the field of an anchor.
    pub fn go(&mut self, anchor: Anchor, level: Option<Level>) {
        if let Anchor::Puzzle(_, PuzzleField::Hint(of, _)) = &anchor {
            self.level = *of;
        } else if let Some(level) = level {
            self.level = level;
        }
        self.select(Selection::of(&anchor));
        self.jump = Some(anchor);
    }
}
