//! The five places: what is edited there, and what is looked at beside it.

pub mod build;
mod codes;
mod dress;
mod file_name;
mod item;
mod print;
mod prove;
mod rehearsal;
mod write;

use eframe::egui::Ui;

pub use print::Draft;

use crate::app::ctx::Ctx;
use crate::app::desk::Desk;
use crate::app::preview::Wanted;
use crate::app::session::{Selection, Tab};
use crate::diag::Hinted;
use crate::ids::{PuzzleId, ThemeId};
use crate::redress::{Leftover, Mended};
use crate::theme::Theme;

/// What the fields of a place hold that the kit does not: text that is no setup yet, what to export, filters.
#[derive(Debug, Default)]
pub struct Locals {
    /// The setup being written, while it cannot be read.
    pub setup: Option<build::SetupDraft>,
    /// What to export.
    pub export: Draft,
    /// How the drawn flow is looked at, and what is being joined in it.
    pub drawn: build::Drawn,
    /// A word to be added.
    pub new_word: String,
    /// A family of the system's fonts, to be chosen for a role.
    pub family: String,
    /// What is looked for among the mechanics.
    pub gallery: build::Sought,
    /// What the season before left behind, and which mended places still stand, for which revision of the kit.
    pub leftovers: Option<(u64, Vec<Leftover>, Vec<Mended>)>,
    /// What was mended by rule, until the list is closed.
    pub mended: Vec<Mended>,
    /// The name for the kit's files, while it is written.
    pub file_name: Option<String>,
    /// Whether a change of theme shall propose new codes.
    pub keep_codes: bool,
    /// Whether changes to palette and lettering go into this kit only, though it wears a theme of its own.
    pub kit_only: bool,
    /// A telling colour to be added.
    pub new_colour: String,
    /// A word of the theme to be added.
    pub new_theme_word: String,
    /// The theme that is held beside the one worn, read.
    pub target: Option<(ThemeId, Hinted<Theme>)>,
    /// A symbol of the theme to be added.
    pub new_symbol: String,
    /// The symbol that is being given another name, and that name.
    pub renaming: Option<(String, String)>,
    /// Small pictures of the theme's art.
    pub thumbs: dress::Thumbs,
    /// The name of a theme to be begun.
    pub theme_name: String,
    /// Only findings that block or warn.
    pub hide_notes: bool,
    /// What a proposal of codes is asked for with.
    pub codes: codes::CodesDraft,
    /// A play being written down.
    pub play: rehearsal::PlayDraft,
}

/// Draws the fields of the place.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, locals: &mut Locals, desk: &mut Desk) {
    match cx.session.tab {
        Tab::Write => write::ui(ui, cx),
        Tab::Build => build::ui(ui, cx, locals, desk),
        Tab::Dress => dress::ui(ui, cx, locals),
        Tab::Prove => prove::ui(ui, cx, locals),
        Tab::Print => print::ui(ui, cx, locals),
    }
}

/// What is looked at beside the fields.
#[must_use]
pub fn wanted(cx: &Ctx<'_>) -> Wanted {
    let (paper, edition) = (cx.session.paper, cx.session.edition);
    match cx.session.selection(cx.kit) {
        Selection::Letter | Selection::Facts => Wanted::Letter(paper, edition),
        Selection::Sheets | Selection::Bundle => Wanted::Sheets(paper, edition),
        Selection::Theme => match &cx.session.target {
            Some(theme) if *theme != cx.kit.theme => {
                Wanted::SideBySide(theme.clone(), cx.session.symbols.clone(), edition)
            }
            _ => Wanted::Pieces(edition),
        },
        Selection::Lettering => cx.session.specimens.clone().map_or(Wanted::Pieces(edition), Wanted::Specimens),
        Selection::Palette
        | Selection::Pictures
        | Selection::Words
        | Selection::Dressings
        | Selection::Leftovers
        | Selection::Pieces => Wanted::Pieces(edition),
        Selection::Gallery(_) => Wanted::Gallery(edition),
        Selection::Finish => Wanted::Of(Selection::Note(cx.kit.finish.card.clone()), edition),
        Selection::Prop(id) if cx.kit.prop(&id).is_none_or(|prop| prop.printed.is_none()) => Wanted::Nothing,
        Selection::Levels
        | Selection::Spot(_)
        | Selection::Findings
        | Selection::Flow
        | Selection::Drawn
        | Selection::Codes
        | Selection::Rehearsal
        | Selection::Plays => Wanted::Nothing,
        selection @ (Selection::Note(_)
        | Selection::Hints(_)
        | Selection::Puzzle(_)
        | Selection::Lock(_)
        | Selection::Box(_)
        | Selection::Prop(_)
        | Selection::Readings(_)) => Wanted::Of(selection, edition),
    }
}

/// The title of a puzzle, for lists.
fn puzzle_title(cx: &Ctx<'_>, id: &PuzzleId) -> String {
    cx.kit.puzzle(id).map_or_else(|| id.to_string(), |puzzle| cx.say(&puzzle.title))
}
