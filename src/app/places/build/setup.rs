use eframe::egui::Ui;

use crate::app::ctx::Ctx;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::{Anchor, Level, PuzzleField};
use crate::ids::PuzzleId;
use crate::kit::{LevelChange, Puzzle, RawSetup};

/// The text of a setup while it is written: it may be no RON yet, and the kit holds only what is.
#[derive(Clone, Debug)]
pub struct SetupDraft {
    puzzle: PuzzleId,
    level: Level,
    /// The setup of the kit that the text was last equal to; another one there (undo, say) wins.
    of: Option<RawSetup>,
    text: String,
    fault: Option<String>,
}

/// The setup at the level looked at, as RON text; true when the puzzle changed.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, draft: &mut Option<SetupDraft>) -> bool {
    let level = cx.session.level;
    let mut changed = own_ui(ui, puzzle, level);
    let current = setup_of(puzzle, level).cloned();
    let fresh = |current: &Option<RawSetup>| SetupDraft {
        puzzle: puzzle.id.clone(),
        level,
        of: current.clone(),
        text: current.as_ref().map_or_else(String::new, |setup| dedented(setup.ron())),
        fault: None,
    };
    let draft = match draft {
        Some(kept) if kept.puzzle == puzzle.id && kept.level == level && kept.of == current => kept,
        other => other.insert(fresh(&current)),
    };
    if current.is_some() {
        let rows = draft.text.lines().count().clamp(4, 18);
        let field = Field::new("Setup in RON").at(Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup)).salt(level);
        if field.code(ui, cx, rows, &mut draft.text) {
            match RawSetup::new(&draft.text) {
                Ok(setup) => {
                    draft.fault = None;
                    draft.of = Some(setup.clone());
                    set_setup(puzzle, level, setup);
                    changed = true;
                }
                Err(error) => {
                    let at = error.span.start;
                    draft.fault = Some(format!("line {}, column {}: {}", at.line, at.col, error.code));
                }
            }
        }
    }
    match &draft.fault {
        Some(fault) => {
            ui.trouble(
                &crate::diag::Trouble::new(fault.clone())
                    .hint("this is no RON yet; the kit keeps the last setup that could be read"),
            );
        }
        None => refusal_ui(ui, cx, &puzzle.id, level),
    }
    changed
}

/// A setup without the indentation that it has in the kit file, where it stands deeper.
fn dedented(ron: &str) -> String {
    let indent = |line: &str| line.len() - line.trim_start_matches(' ').len();
    let last = ron.lines().skip(1).last().map_or(0, indent);
    let lines: Vec<&str> = ron
        .lines()
        .enumerate()
        .map(|(at, line)| if at == 0 { line } else { line.get(last.min(indent(line))..).unwrap_or(line) })
        .collect();
    lines.join("\n")
}

/// What the mechanic says to the setup, when it cannot carry it.
fn refusal_ui(ui: &mut Ui, cx: &Ctx<'_>, id: &PuzzleId, level: Level) {
    if let Some(laid) = cx.derived.puzzle(level, id)
        && let Err(trouble) = &laid.laid
    {
        ui.trouble(trouble);
    }
}

/// Whether a level has a setup of its own, and the switch for it.
fn own_ui(ui: &mut Ui, puzzle: &mut Puzzle, level: Level) -> bool {
    if level == Level::Standard {
        return false;
    }
    let mut own = setup_of(puzzle, level).is_some();
    let words = format!("The {} level has a setup of its own", level.word());
    if !ui.checkbox(&mut own, words).changed() {
        if !own {
            ui.quiet("It plays with the setup of the standard level.");
        }
        return false;
    }
    if own {
        let setup = puzzle.setup.clone();
        set_setup(puzzle, level, setup);
    } else if let Some(change) = change_of(puzzle, level) {
        change.setup = None;
        let empty = change.hints.is_none();
        if empty {
            match level {
                Level::Gentle => puzzle.gentle = None,
                Level::Stiff => puzzle.stiff = None,
                Level::Standard => {}
            }
        }
    }
    true
}

fn setup_of(puzzle: &Puzzle, level: Level) -> Option<&RawSetup> {
    match level {
        Level::Standard => Some(&puzzle.setup),
        other => puzzle.change(other).and_then(|change| change.setup.as_ref()),
    }
}

fn change_of(puzzle: &mut Puzzle, level: Level) -> Option<&mut LevelChange> {
    match level {
        Level::Standard => None,
        Level::Gentle => Some(puzzle.gentle.get_or_insert_default()),
        Level::Stiff => Some(puzzle.stiff.get_or_insert_default()),
    }
}

fn set_setup(puzzle: &mut Puzzle, level: Level, setup: RawSetup) {
    match change_of(puzzle, level) {
        None => puzzle.setup = setup,
        Some(change) => change.setup = Some(setup),
    }
}
