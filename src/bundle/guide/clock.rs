use serde::Serialize;

use super::Source;
use super::words::list;
use crate::kit::{Lock, LockKind};
use crate::rehearse::{Opens, Past};
use crate::script::capital;

/// A row of the table that tells a host by the clock whether a table is late.
#[derive(Clone, Debug, Serialize)]
pub(super) struct ClockRow {
    half: String,
    slow: String,
    mark: String,
    opens: String,
}

/// What the table is, and how sure.
pub(super) fn note(source: &Source<'_>) -> String {
    let Some(rehearsal) = source.rehearsal else { return String::new() };
    let kit = &source.opened.kit;
    let (least, most) = kit.players;
    let groups = if least == most { format!("{least}") } else { format!("{least} to {most}") };
    let known = match kit.plays.plays.len() {
        0 => "estimates".to_owned(),
        1 => "estimates and one real play".to_owned(),
        many => format!("estimates and {many} real plays"),
    };
    format!(
        "From {} simulated evenings at this level with groups of {groups}, which rest on {known}: by which minute half of \
         the groups, and nine in ten, have a lock open. It decides nothing by itself: the rule above says when to offer a \
         token. Where a group works at no lock at all, offer one of the lock in the uppermost row that is still shut.",
        rehearsal.runs
    )
}

/// The rows, the earliest first: every lock, with the box that its opening mostly opens.
pub(super) fn rows(source: &Source<'_>) -> Vec<ClockRow> {
    let Some(rehearsal) = source.rehearsal else { return Vec::new() };
    let kit = &source.opened.kit;
    let lock = |past: &Past| match &past.opens {
        Opens::Lock(id) => kit.lock(id),
        Opens::Box(_) => None,
    };
    let mut rows: Vec<ClockRow> = Vec::new();
    for past in &rehearsal.past {
        let half = format!("{:.0} min", past.half);
        let slow = past.slow.map_or_else(|| "–".to_owned(), |slow| format!("{slow:.0} min"));
        match (lock(past), &past.opens) {
            (Some(lock), _) => {
                let alone: Vec<String> = alone(source, lock);
                let name = source.say(&lock.name);
                let opens = capital(&match (alone.is_empty(), lock.kind == LockKind::Spoken) {
                    (true, _) => name,
                    (false, true) => format!("{}, by the word that is said", list(&alone)),
                    (false, false) => format!("{name}, and with it {}", list(&alone)),
                });
                rows.push(ClockRow { half, slow, mark: lock.mark.clone(), opens });
            }
            (None, Opens::Box(id)) => {
                let several = kit.box_def(id).filter(|item| item.locks.len() > 1);
                let Some(item) = several else { continue };
                rows.push(ClockRow { half, slow, mark: String::new(), opens: capital(&source.say(&item.name)) });
            }
            (None, Opens::Lock(_)) => {}
        }
    }
    rows
}

/// The boxes that hang on this lock alone.
fn alone(source: &Source<'_>, lock: &Lock) -> Vec<String> {
    let boxes = source.opened.kit.boxes.iter().filter(|item| item.locks.len() == 1 && item.locks.contains(&lock.id));
    boxes.map(|item| source.say(&item.name)).collect()
}
