use super::{Facts, Sink, dress};

check!(
    /// ## What it does
    /// Flags two colours that guests must name and that some eyes can hardly tell apart: full colour vision, or protan,
    /// deutan or tritan vision (Machado and others 2009), or any eyes on a grey print. The distance is CIEDE2000; below
    /// 4.6 it blocks, below 10 it warns.
    ///
    /// ## Why it matters at the table
    /// About one man in twelve sees red and green otherwise than his neighbours, and lamplight dims every colour.
    ///
    /// ## How to mend
    /// Take colours that differ in lightness, or use the twin in shape or word that every such puzzle has.
    ColoursAlike, "colours-alike", Blocks, "two telling colours that some eyes can hardly tell apart",
    "a guest who cannot tell the two apart cannot solve the puzzle", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let coloured = facts.kit.puzzles.iter().any(|puzzle| {
        crate::mechanics::find(&puzzle.mechanic).is_ok_and(|mechanic| mechanic.meta().colour)
    });
    if coloured {
        dress::alike_colours(facts.theme).into_iter().for_each(|draft| sink.add(draft));
    }
}
