//! What of a theme and a kit cannot be read or filled, told before anything is printed.

use crate::diag::{Anchor, PuzzleField, Trouble};
use crate::kit::Kit;
use crate::script::Script;
use crate::theme::{Colour, Loaded};

/// The theme's telling colours; one that cannot be read is left out and told.
pub(super) fn telling_colours<'a>(theme: &'a Loaded, troubles: &mut Vec<(Anchor, Trouble)>) -> Vec<(&'a str, Colour)> {
    let mut colours = Vec::new();
    for (name, hex) in &theme.theme.colours {
        match Colour::parse(hex) {
            Some(colour) => colours.push((name.as_str(), colour)),
            None => troubles.push((
                Anchor::Palette(name.clone()),
                Trouble::new(format!("\"{hex}\" is no colour")).hint("write six hex digits, as in #1F2A44"),
            )),
        }
    }
    colours
}

/// Names and remarks are filled where they are printed; here only what cannot be filled is put on the list.
pub(super) fn fill_names(kit: &Kit, script: &mut Script) {
    let mut texts: Vec<(Anchor, &str)> = Vec::new();
    for item in &kit.boxes {
        texts.extend([&item.name, &item.about].map(|text| (Anchor::Box(item.id.clone()), text.as_str())));
    }
    for item in &kit.locks {
        texts.extend([&item.name, &item.how_to_set].map(|text| (Anchor::Lock(item.id.clone()), text.as_str())));
    }
    for item in &kit.spots {
        texts.extend([&item.name, &item.about].map(|text| (Anchor::Spot(item.id.clone()), text.as_str())));
    }
    for item in &kit.props {
        texts.extend([&item.name, &item.about].map(|text| (Anchor::Prop(item.id.clone()), text.as_str())));
        if let Some(printed) = &item.printed {
            let words = printed.texts().chain([printed.back.as_str()]);
            texts.extend(words.map(|text| (Anchor::Prop(item.id.clone()), text)));
        }
    }
    texts.extend([&kit.finish.treat, &kit.finish.cue].map(|text| (Anchor::Finish, text.as_str())));
    texts.push((Anchor::Kit, &kit.cost));
    texts.extend(kit.revision.changes.iter().map(|text| (Anchor::Kit, text.as_str())));
    texts.extend(kit.opening.iter().map(|text| (Anchor::Kit, text.as_str())));
    texts.extend(kit.preparation.iter().map(|step| (Anchor::Kit, step.what.as_str())));
    for puzzle in &kit.puzzles {
        let at = |field| Anchor::Puzzle(puzzle.id.clone(), field);
        texts.push((at(PuzzleField::Answer), &puzzle.answer));
        let own = puzzle.preparation.iter();
        texts.extend(own.map(|step| (at(PuzzleField::Whole), step.what.as_str())));
    }
    for (at, text) in texts {
        if let Err(trouble) = script.words.fill(text) {
            script.unfilled.push((at, trouble));
        }
    }
}
