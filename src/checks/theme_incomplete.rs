use super::{Draft, Facts, Sink, dress};
use crate::diag::{Anchor, Severity};

check!(
    /// ## What it does
    /// Flags pictures of the theme that are missing, cannot be read or are refused, and what is left out of those that
    /// can: scripts, text, references outside, things without a size. `inklatch themes` also flags frames, slots,
    /// colours, fonts, symbols and dressings that a theme ought to have and has not, slots that leave their picture, overlap
    /// or are too small, frames of other proportions than what they are for, and names that mean nothing.
    ///
    /// ## Why it matters at the table
    /// A piece that wears the picture is not printed, or is printed without a part of it. Each finding says what it costs.
    ///
    /// ## How to mend
    /// Save the picture again as plain SVG with a width and a height, with all text turned into paths, and put it where
    /// theme.ron looks for it. `inklatch explain frames` says where each slot stands in the built-in themes.
    ThemeIncomplete, "theme-incomplete", Blocks, "a picture of the theme that is missing or cannot be used as it is",
    "a piece that wears the picture is not printed, or lacks a part of it", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    dress::unread(facts.theme).into_iter().for_each(|draft| sink.add(draft));
    // A picture of the kit that cannot be used at all is told by the piece that should wear it.
    for (path, less) in &facts.theme.less_pictures {
        let note = facts.kit.notes.iter().find(|note| note.picture.as_ref() == Some(path));
        let anchor = note.map_or(Anchor::Kit, |note| Anchor::Note(note.id.clone()));
        let draft = Draft::of(anchor, &less.clone().at(path.to_string())).severity(Severity::Warns);
        sink.add(draft.why("the picture is printed without it"));
    }
}
