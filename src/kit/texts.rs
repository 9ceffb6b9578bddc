//! All texts of a kit, wherever they stand, to be read or changed.

use super::{Kit, LevelChange, RawSetup};
use crate::diag::{Anchor, Level, PuzzleField, Step};
use crate::kit::ron_text::{literals, splice};

/// Calls `visit` with every text that an author writes: its place, and the text to change. Texts inside setups are
/// visited one string at a time, without their RON quoting; a string that names a field's symbol or colour is visited
/// as well.
pub fn visit_texts(kit: &mut Kit, visit: &mut dyn FnMut(&Anchor, &mut String)) {
    for text in [&mut kit.title, &mut kit.brief, &mut kit.cost].into_iter().chain(&mut kit.revision.changes) {
        visit(&Anchor::Kit, text);
    }
    for text in kit.opening.iter_mut().chain(kit.preparation.iter_mut().map(|step| &mut step.what)) {
        visit(&Anchor::Kit, text);
    }
    let letter = &mut kit.letter;
    for text in
        [&mut letter.heading, &mut letter.salutation, &mut letter.body, &mut letter.closing, &mut letter.signature]
    {
        visit(&Anchor::Letter, text);
    }
    for note in &mut kit.notes {
        let at = Anchor::Note(note.id.clone());
        visit(&at, &mut note.title);
        visit(&at, &mut note.text);
    }
    for item in &mut kit.spots {
        let at = Anchor::Spot(item.id.clone());
        visit(&at, &mut item.name);
        visit(&at, &mut item.about);
    }
    for item in &mut kit.boxes {
        let at = Anchor::Box(item.id.clone());
        visit(&at, &mut item.name);
        visit(&at, &mut item.about);
    }
    for item in &mut kit.locks {
        let at = Anchor::Lock(item.id.clone());
        visit(&at, &mut item.name);
        visit(&at, &mut item.how_to_set);
    }
    for item in &mut kit.props {
        let at = Anchor::Prop(item.id.clone());
        visit(&at, &mut item.name);
        visit(&at, &mut item.about);
        if let Some(printed) = &mut item.printed {
            visit(&at, &mut printed.text);
            printed.more.iter_mut().for_each(|text| visit(&at, text));
            visit(&at, &mut printed.back);
        }
    }
    visit(&Anchor::Finish, &mut kit.finish.treat);
    visit(&Anchor::Finish, &mut kit.finish.cue);
    for (name, forms) in &mut kit.words {
        let at = Anchor::Word(name.clone());
        visit(&at, &mut forms.one);
        visit(&at, &mut forms.many);
    }
    for level in Level::ALL {
        visit(&Anchor::Kit, &mut kit.levels.of_mut(level).about);
    }
    for puzzle in &mut kit.puzzles {
        let id = puzzle.id.clone();
        let at = |field| Anchor::Puzzle(id.clone(), field);
        visit(&at(PuzzleField::Title), &mut puzzle.title);
        visit(&at(PuzzleField::Answer), &mut puzzle.answer);
        for (key, name) in &mut puzzle.names {
            visit(&at(PuzzleField::Name(key.clone())), name);
        }
        puzzle.preparation.iter_mut().for_each(|step| visit(&at(PuzzleField::Whole), &mut step.what));
        for step in Step::ALL {
            visit(&at(PuzzleField::Hint(Level::Standard, step)), puzzle.hints.step_mut(step));
        }
        visit_setup(&mut puzzle.setup, &at(PuzzleField::Setup), visit);
        for (level, change) in [(Level::Gentle, &mut puzzle.gentle), (Level::Stiff, &mut puzzle.stiff)] {
            let Some(LevelChange { setup, hints, .. }) = change else { continue };
            for step in Step::ALL {
                if let Some(hints) = hints {
                    visit(&at(PuzzleField::Hint(level, step)), hints.step_mut(step));
                }
            }
            if let Some(setup) = setup {
                visit_setup(setup, &at(PuzzleField::Setup), visit);
            }
        }
    }
}

/// Visits the strings of a setup. One whose RON cannot be put together again stays as it was.
fn visit_setup(setup: &mut RawSetup, at: &Anchor, visit: &mut dyn FnMut(&Anchor, &mut String)) {
    let mut changed = Vec::new();
    for literal in literals(setup.ron()) {
        let mut text = literal.text.clone();
        visit(at, &mut text);
        if text != literal.text {
            changed.push((literal, text));
        }
    }
    if !changed.is_empty()
        && let Ok(fresh) = RawSetup::new(&splice(setup.ron(), &changed))
    {
        *setup = fresh;
    }
}
