use super::{Facts, Finding, Fix, Sink, dress, trying};

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
    "guests match pieces to locks by these pictures", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let mut marks: Vec<&str> = facts.kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
    marks.sort_unstable();
    marks.dedup();
    let party = facts.party;
    dress::alike_pictures(facts.theme, &party.palette, &party.pictures, &marks).into_iter().for_each(|draft| sink.add(draft));
}

/// Another symbol for a lock whose mark is one of the two.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let named: Vec<&str> = finding.message.split(' ').collect();
    let locks = facts.kit.locks.iter().rev().filter(|lock| named.contains(&lock.mark.as_str())).collect();
    trying::sound(facts, finding, trying::other_marks(facts, locks))
}
