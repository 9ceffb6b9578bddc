use super::{Facts, Sink, dress};

check!(
    /// ## What it does
    /// Flags pictures of the theme that are missing, cannot be read or are refused, and what is left out of those that
    /// can: scripts, text, references outside, things without a size. `inklatch themes` also flags frames, slots,
    /// colours, fonts, symbols and dressings that a theme ought to have and has not.
    ///
    /// ## Why it matters at the table
    /// A piece that wears the picture is not printed, or is printed without a part of it.
    ///
    /// ## How to mend
    /// Save the picture again as plain SVG with a width and a height, with all text turned into paths, and put it where
    /// theme.ron looks for it.
    ThemeIncomplete, "theme-incomplete", Blocks, "a picture of the theme that is missing or cannot be used as it is",
    "a piece that wears the picture is not printed, or lacks a part of it", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    dress::unread(facts.theme).into_iter().for_each(|draft| sink.add(draft));
}
