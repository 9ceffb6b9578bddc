use super::{Draft, Facts, Sink, ladder, mends};

check!(
    /// ## What it does
    /// Notes two steps of one ladder that say nearly the same.
    ///
    /// ## Why it matters at the table
    /// A group that asks again is told nothing new.
    ///
    /// ## How to mend
    /// Nudge: where to look. Method: what to do. Giveaway: all but the last step.
    HintStepsAlike, "hint-steps-alike", Notes, "two hint steps that say nearly the same",
    "a group that asks again is told nothing new", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for ladder in ladder::hints(facts).chunks(3) {
        for pair in ladder.windows(2) {
            let [first, second] = pair else { continue };
            if first.text.is_empty() || second.text.is_empty() {
                continue;
            }
            if mends::alike(first.text, second.text) {
                let title = &second.puzzle.title;
                let message =
                    format!("the {} and the {} of \"{title}\" say nearly the same", first.step.word(), second.step.word());
                let draft = Draft::new(second.anchor.clone(), message).help("let the later step tell more");
                sink.add(mends::with_drafted(facts, draft, second));
            }
        }
    }
}
