use super::{Claim, Speaker, View};
use crate::kit::LockKind;
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::mechanics::words::listed;
use crate::readings::{Budget, Readings};

/// Every case that fits: for each speaker, whether the truth is told.
pub(super) fn cases(claims: &[Claim], liars: Option<usize>) -> Vec<Vec<bool>> {
    let count = claims.len().min(limits::SPEAKERS);
    (0..1_u32 << count)
        .map(|bits| (0..claims.len()).map(|at| bits >> at & 1 == 1).collect::<Vec<bool>>())
        .filter(|truthful| {
            liars.is_none_or(|liars| truthful.iter().filter(|told| !**told).count() == liars)
                && claims.iter().zip(truthful).all(|(claim, told)| claim.holds(truthful) == Some(*told))
        })
        .collect()
}

/// The names of those who say what is false, from the top down; none where several cases fit, or none does.
pub(super) fn liars(view: &View) -> Option<Vec<String>> {
    if view.speakers.len() > limits::SPEAKERS {
        return None;
    }
    let claims: Vec<Claim> = view.speakers.iter().map(|speaker| speaker.says).collect();
    let [only] = cases(&claims, view.liars).try_into().ok()?;
    let false_ones = view.speakers.iter().zip(only).filter(|(_, told)| !told);
    Some(false_ones.map(|(speaker, _)| speaker.name.clone()).collect())
}

/// The badges of those who tell the truth, from the top down, in every case that fits.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let mut readings = Readings::default();
    if view.speakers.len() > limits::SPEAKERS {
        readings.unproven = true;
        return readings;
    }
    // One step for each case that is looked at.
    if !(0..1_u32 << view.speakers.len()).all(|_| budget.step()) {
        readings.unproven = true;
        return readings;
    }
    let claims: Vec<Claim> = view.speakers.iter().map(|speaker| speaker.says).collect();
    let cases = cases(&claims, view.liars);
    let mut too_long = 0;
    for truthful in &cases {
        let told = || view.speakers.iter().zip(truthful).filter(|(_, told)| **told).map(|(speaker, _)| speaker);
        let answer: String = told().map(|speaker| speaker.badge).collect();
        let names: Vec<String> = told().map(|speaker| speaker.name.clone()).collect();
        too_long += usize::from(!lock.spells(&answer));
        readings.add(lock, &answer, format!("the truth is told by {}", listed(&names)));
    }
    if cases.is_empty() {
        readings.remarks.push("what is said fits no case".into());
    }
    if too_long > 0 {
        readings.remarks.push(format!("{too_long} cases fit whose badges cannot be set on the lock"));
    }
    if cases.len() - too_long > 1 && readings.list.len() == 1 {
        readings.remarks.push("more than one case fits, though the badges read alike".into());
    }
    readings
}

pub(super) fn slips(view: &View) -> Vec<Slip> {
    let Some(liars) = liars(view) else { return Vec::new() };
    let badges =
        |of: &dyn Fn(&&Speaker) -> bool| view.speakers.iter().filter(of).map(|speaker| speaker.badge).collect();
    vec![
        (
            badges(&|speaker| liars.contains(&speaker.name)),
            "these are the badges of those who say what is false: read the last line of the sheet aloud.",
        ),
        (badges(&|_| true), "these are all the badges: only those of some count, as the last line of the sheet says."),
    ]
}
