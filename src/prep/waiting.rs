//! What is done for the locks beforehand: codes are set, and words that are said are told to those who wait for them.

use crate::kit::{Kit, Lock, LockKind};

/// The step that sets the codes, with how many there are; none where no lock has one.
pub(super) fn set(kit: &Kit) -> Option<(String, usize)> {
    let coded: Vec<&Lock> = kit.locks.iter().filter(|lock| lock.kind.wheels().is_some()).collect();
    let pushed = coded.iter().filter(|lock| matches!(lock.kind, LockKind::Directions(_))).count();
    let with = match (coded.len() - pushed, pushed) {
        (0, 0) => return None,
        (_, 0) => "wheels",
        (0, _) => "pushes",
        _ => "wheels or pushes",
    };
    let what = if coded.len() == 1 {
        format!("Set the code of the lock with {with} while it is open; test it twice before you shut it.")
    } else {
        format!("Set the code of every lock with {with} while it is open; test each twice before you shut it.")
    };
    Some((what, coded.len()))
}

/// The step that tells words; none where none is said.
pub(super) fn told(kit: &Kit) -> Option<String> {
    let (told, own) = kit.words();
    let slips = |count: usize| if count == 1 { "its slip" } else { "their slips" };
    let told = match told.as_slice() {
        [] => None,
        [only] => kit.waits_for(&only.id).map(|spot| {
            format!("Tell {} which word to wait for, and what is opened then; hand over its slip.", spot.name.trim())
        }),
        many => {
            let mut names: Vec<&str> = Vec::new();
            for spot in many.iter().filter_map(|lock| kit.waits_for(&lock.id)) {
                if !names.contains(&spot.name.trim()) {
                    names.push(spot.name.trim());
                }
            }
            let each = if names.len() == 1 { "" } else { " each" };
            let names = match names.split_last() {
                Some((last, [])) => (*last).to_owned(),
                Some((last, first)) => format!("{} and {last}", first.join(", ")),
                None => return None,
            };
            Some(format!("Tell {names}{each} which word to wait for, and what is opened then; hand over the slips."))
        }
    };
    let own = match own.len() {
        0 => None,
        1 => Some("the word".to_owned()),
        many => Some(format!("{many} words")),
    }
    .map(|which| {
        let slips = slips(kit.words().1.len());
        let other = if told.is_some() { "For the other boxes" } else { "Words that are said" };
        format!("{other}: you yourself wait for {which}; keep {slips} by you.")
    });
    match (told, own) {
        (Some(told), Some(own)) => Some(format!("{told} {own}")),
        (told, own) => told.or(own),
    }
}
