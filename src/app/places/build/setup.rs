use eframe::egui::Ui;

use serde_json::Value;

use super::{faults, form};
use crate::app::ctx::Ctx;
use crate::app::widgets::{Field, UiExt as _};
use crate::diag::{Anchor, Hinted, Level, PuzzleField, Trouble};
use crate::ids::PuzzleId;
use crate::kit::{LevelChange, Puzzle, RawSetup};
use crate::mechanics::find;
use crate::mechanics::form::FormField;

/// A setup while it is written: its text may be no RON yet, and the kit holds only what is.
#[derive(Clone, Debug)]
pub struct SetupDraft {
    puzzle: PuzzleId,
    level: Level,
    mechanic: String,
    /// The setup of the kit that the draft was last equal to; another one there (undo, say) wins.
    of: Option<RawSetup>,
    text: String,
    /// The setup as a form, as long as the mechanic can read it.
    form: Option<Form>,
    fault: Option<String>,
}

#[derive(Clone, Debug)]
struct Form {
    fields: Vec<FormField>,
    data: Value,
}

impl SetupDraft {
    fn new(puzzle: &Puzzle, level: Level) -> Self {
        let of = setup_of(puzzle, level).cloned();
        let ron = of.as_ref().map_or("", RawSetup::ron);
        let form = || -> Hinted<Form> {
            let mechanic = find(&puzzle.mechanic)?;
            Ok(Form { fields: mechanic.form()?, data: mechanic.setup_data(ron)? })
        };
        Self {
            puzzle: puzzle.id.clone(),
            level,
            mechanic: puzzle.mechanic.clone(),
            text: dedented(ron),
            form: form().ok(),
            of,
            fault: None,
        }
    }

    fn is_of(&self, puzzle: &Puzzle, level: Level) -> bool {
        self.puzzle == puzzle.id
            && self.level == level
            && self.mechanic == puzzle.mechanic
            && self.of.as_ref() == setup_of(puzzle, level)
    }
}

/// The setup at the level looked at, as a form and as text; true when the puzzle changed.
pub fn ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, draft: &mut Option<SetupDraft>) -> bool {
    let level = cx.session.level;
    let mut changed = own_ui(ui, puzzle, level);
    let draft = match draft {
        Some(kept) if kept.is_of(puzzle, level) => kept,
        other => other.insert(SetupDraft::new(puzzle, level)),
    };
    if let Some(current) = draft.of.clone() {
        let anchor = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup);
        let faults = match &draft.form {
            Some(form) => faults::found(cx, &puzzle.id, level, current.ron(), &form.fields),
            None => Vec::new(),
        };
        match &mut draft.form {
            Some(form) => {
                let salt = format!("{}/{}", puzzle.id, level.word());
                if form::ui(ui, cx, &form.fields, &mut form.data, (&anchor, &faults), &salt) {
                    changed |= take_form(puzzle, draft, &current);
                }
                ui.collapsing("The same as text", |ui| changed |= text_ui(ui, cx, puzzle, draft, None));
            }
            None => changed |= text_ui(ui, cx, puzzle, draft, Some(anchor)),
        }
    }
    match &draft.fault {
        Some(fault) => {
            ui.trouble(
                &Trouble::new(fault.clone())
                    .hint("the kit keeps the last setup that could be read until this is mended"),
            );
        }
        None if draft.form.is_none() => refusal_ui(ui, cx, &puzzle.id, level),
        None => {}
    }
    changed
}

/// Takes what the form holds into the puzzle; true when it could be taken.
fn take_form(puzzle: &mut Puzzle, draft: &mut SetupDraft, current: &RawSetup) -> bool {
    let Some(form) = &draft.form else { return false };
    let text = find(&puzzle.mechanic).and_then(|mechanic| mechanic.setup_text(current.ron(), &form.data));
    let setup = text.and_then(|text| RawSetup::new(&text).map_err(|error| Trouble::new(error.to_string())));
    match setup {
        Ok(setup) => {
            draft.fault = None;
            draft.text = dedented(setup.ron());
            draft.of = Some(setup.clone());
            set_setup(puzzle, draft.level, setup);
            true
        }
        Err(trouble) => {
            draft.fault = Some(trouble.message);
            false
        }
    }
}

/// The setup as RON text; true when the puzzle changed.
fn text_ui(ui: &mut Ui, cx: &Ctx<'_>, puzzle: &mut Puzzle, draft: &mut SetupDraft, anchor: Option<Anchor>) -> bool {
    let rows = draft.text.lines().count().clamp(4, 18);
    let field = Field::new("Setup in RON").salt((puzzle.id.as_str(), draft.level));
    let field = anchor.into_iter().fold(field, Field::at);
    if !field.code(ui, cx, rows, &mut draft.text) {
        return false;
    }
    match RawSetup::new(&draft.text) {
        Ok(setup) => {
            draft.fault = None;
            draft.of = Some(setup.clone());
            // The form follows; where the mechanic cannot read the text, it says so below, and the form waits.
            if let Some(form) = &mut draft.form
                && let Ok(data) = find(&puzzle.mechanic).and_then(|mechanic| mechanic.setup_data(setup.ron()))
            {
                form.data = data;
            }
            set_setup(puzzle, draft.level, setup);
            true
        }
        Err(error) => {
            let at = error.span.start;
            draft.fault = Some(format!("this is no RON yet: line {}, column {}: {}", at.line, at.col, error.code));
            false
        }
    }
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
        let empty = *change == LevelChange::default();
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
