use super::{FIELD, Thing, View};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::pictures::word;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};
use crate::units::Mm;

/// Two things whose middles are nearer than this share of their breadths together hide parts of each other (estimate;
/// common practice, no source).
const COVERS: f64 = 0.42;

/// What each line of the list can be counted to. A thing that lies half under another, or is cut by the edge, may be
/// counted or not; so may ringed things where no rule is stated.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut all = Readings::default();
    if view.things.len() > limits::FIELD_MARKS || view.list.len() > limits::WHEELS {
        all.unproven = true;
        return all;
    }
    let (mut marks, mut cues, mut remarks) = (Vec::new(), Vec::new(), Vec::new());
    for (index, picture) in view.list.iter().enumerate() {
        let name = word(picture);
        if view.list.iter().take(index).any(|other| other == picture) {
            remarks.push(format!("the {name} stands on the list twice"));
        }
        let of_kind = || view.things.iter().filter(|thing| thing.picture == *picture);
        let sure = of_kind().filter(|thing| !thing.ringed && !doubtful(thing, view)).count();
        let unsure = of_kind().filter(|thing| !thing.ringed && doubtful(thing, view)).count();
        let ringed = of_kind().filter(|thing| thing.ringed).count();
        if unsure > 0 {
            remarks.push(format!("{unsure} of the kind {name} are half hidden or cut by the edge"));
        }
        let mut counts: Vec<usize> = (sure..=sure + unsure).collect();
        if ringed > 0 && !view.ring_rule {
            counts.extend((sure..=sure + unsure).map(|count| count + ringed));
            remarks.push("some things have a circle round them, and nothing says what that means".into());
        }
        counts.sort_unstable();
        counts.dedup();
        let first = marks.len();
        for count in counts {
            if count > 9 {
                remarks.push(format!("there are {count} of the kind {name}: no single wheel shows that"));
            }
            marks.push(Mark::new(format!("{count} of the kind {name}"), count.to_string()));
        }
        cues.push(Cue { label: name, marks: (first..marks.len()).collect() });
    }
    let order = Order::Cued(cues.clone());
    all = read(&marks, &order, lock, budget);
    if !view.say_order {
        remarks.push("nothing says in which order the counts are set".into());
        // One count of each line, in any order: every row of choices is tried as an open order.
        let mut choice = vec![0_usize; cues.len()];
        loop {
            let taken: Option<Vec<Mark>> = cues
                .iter()
                .zip(&choice)
                .map(|(cue, at)| cue.marks.get(*at).and_then(|mark| marks.get(*mark)).cloned())
                .collect();
            let Some(taken) = taken else { break };
            let found = read(&taken, &Order::open(), lock, budget);
            for reading in found.list {
                all.add(lock, &reading.answer, reading.why);
            }
            all.more |= found.more;
            all.unproven |= found.unproven;
            if all.more || all.unproven || !advance(&mut choice, &cues) {
                break;
            }
        }
    }
    remarks.dedup();
    all.remarks = remarks;
    all
}

/// The next choice, as an odometer counts; false after the last.
fn advance(choice: &mut [usize], cues: &[Cue]) -> bool {
    for (at, cue) in choice.iter_mut().zip(cues) {
        *at += 1;
        if *at < cue.marks.len() {
            return true;
        }
        *at = 0;
    }
    false
}

/// Whether a guest may doubt that a thing counts: another covers part of it, or the edge cuts it.
fn doubtful(thing: &Thing, view: &View) -> bool {
    let half = thing.across / 2.0;
    let cut = thing.x < half || thing.y < half || thing.x + half > FIELD.w || thing.y + half > FIELD.h;
    let near = |other: &Thing| thing.distance(other) < Mm::new((thing.across + other.across).get() * COVERS);
    cut || view.things.iter().any(|other| !std::ptr::eq(other, thing) && near(other))
}
