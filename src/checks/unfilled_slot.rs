use super::{Draft, Facts, Sink, ladder};

check!(
    /// ## What it does
    /// Flags a slot such as `{{ keeper }}` that no word of the theme or the kit fills.
    ///
    /// ## Why it matters at the table
    /// The brackets are printed.
    ///
    /// ## How to mend
    /// Add the word to the kit, or correct the slot.
    UnfilledSlot, "unfilled-slot", Blocks, "a slot without a word", "the brackets would be printed", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for (anchor, trouble) in &facts.party.script.unfilled {
        sink.add(Draft::of(ladder::settled(facts, anchor), trouble));
    }
}
