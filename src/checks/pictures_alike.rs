use super::{Facts, Sink, dress};

check!(
    /// ## What it does
    /// Flags two locks whose marks look alike at the size at which they are printed, in grey.
    ///
    /// ## Why it matters at the table
    /// Guests match pieces to locks by these pictures; two that look alike send them to the wrong lock.
    ///
    /// ## How to mend
    /// Give one of the locks another symbol, or draw one of the two anew.
    PicturesAlike, "pictures-alike", Warns, "two marks that look alike in print",
    "guests match pieces to locks by these pictures", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let mut marks: Vec<&str> = facts.kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
    marks.sort_unstable();
    marks.dedup();
    dress::alike_pictures(facts.theme, &facts.party.palette, &marks).into_iter().for_each(|draft| sink.add(draft));
}
