use super::{Draft, Facts, Sink, ladder};

check!(
    /// ## What it does
    /// Flags a character that the lettering of its text cannot draw.
    ///
    /// ## Why it matters at the table
    /// It is printed in another lettering, or as an empty box.
    ///
    /// ## How to mend
    /// Write it another way, or choose a lettering that has it.
    GlyphMissing, "glyph-missing", Blocks, "a character that the lettering lacks",
    "it is printed in another lettering, or as an empty box", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for piece in facts.set {
        for glyph in &piece.missing {
            let code = u32::from(glyph.text);
            let message = format!("{} has no \"{}\" (U+{code:04X}) for \"{}\"", glyph.family, glyph.text, glyph.words);
            let draft = Draft::new(ladder::settled(facts, &glyph.from), message);
            sink.add(draft.help("write it another way, or choose a lettering that has it"));
        }
    }
}
