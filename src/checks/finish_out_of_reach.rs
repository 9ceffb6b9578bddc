use super::{Draft, Facts, Sink};
use crate::diag::Anchor;

check!(
    /// ## What it does
    /// Flags a kit whose last box cannot be opened, or whose closing card cannot be had.
    ///
    /// ## Why it matters at the table
    /// The party has no end, and nobody is told where the treat is.
    ///
    /// ## How to mend
    /// The other findings say what is locked behind itself, lies nowhere or is opened by nothing; begin with those.
    FinishOutOfReach, "finish-out-of-reach", Blocks, "the last box cannot be opened, or the closing card not be had",
    "the party has no end, and nobody is told where the treat is", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let finish = &facts.kit.finish;
    // Names that lead nowhere are told elsewhere.
    let (Some(item), Some(_)) = (facts.box_def(&finish.opens), facts.note(&finish.card)) else { return };
    let message = match (facts.flow.boxes.contains_key(&finish.opens), facts.flow.finish_reachable) {
        (_, true) => return,
        (false, _) => format!("{} can never be opened", item.name),
        (true, _) => format!("{} opens, but the closing card lies out of reach", item.name),
    };
    let shut: Vec<String> = item
        .locks
        .iter()
        .filter(|lock| !facts.flow.locks.contains_key(lock))
        .map(|lock| facts.lock(lock).map_or_else(|| lock.to_string(), |lock| lock.name.clone()))
        .collect();
    let draft = Draft::new(Anchor::Finish, message);
    sink.add(if shut.is_empty() {
        draft.help("see what else cannot be reached, and begin there")
    } else {
        draft.help(format!("still locked at the end of every play: {}", shut.join(", ")))
    });
}
