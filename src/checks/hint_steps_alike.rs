use super::{Draft, Facts, Sink, ladder};

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

/// Likeness from which two texts are nearly the same: one minus the share of characters to change (common
/// practice, no source).
const ALIKE: f64 = 0.85;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    for ladder in ladder::hints(facts).chunks(3) {
        for pair in ladder.windows(2) {
            let [first, second] = pair else { continue };
            if first.text.is_empty() || second.text.is_empty() {
                continue;
            }
            let (a, b) = (first.text.to_lowercase(), second.text.to_lowercase());
            if strsim::normalized_levenshtein(&a, &b) >= ALIKE {
                let title = &second.puzzle.title;
                let message =
                    format!("the {} and the {} of \"{title}\" say nearly the same", first.step.word(), second.step.word());
                let draft = Draft::new(second.anchor.clone(), message);
                sink.add(draft.help("let the later step tell more"));
            }
        }
    }
}
