//! The cases that a person tries: suppose that one tells the truth, and follow what must then be so.

use super::{Claim, View};
use crate::limits;
use crate::mechanics::work::Work;

/// What is known of every speaker: whether the truth is told.
type Told = Vec<Option<bool>>;

/// Suppositions that a person makes until every speaker is settled, and the steps that follow from them.
///
/// The count is of both together; a speaker whom no single supposition settles counts as eight, for then two must be
/// followed at a time (the weight is our estimate).
pub(super) fn work(view: &View) -> Option<Work> {
    let claims: Vec<Claim> = view.speakers.iter().map(|speaker| speaker.says).collect();
    if claims.len() > limits::SPEAKERS {
        return None;
    }
    let mut told: Told = vec![None; claims.len()];
    let (_, mut steps) = follow(&claims, view.liars, &mut told);
    let mut trials = 0;
    while told.contains(&None) {
        let Some(settled) = trial(&claims, view.liars, &told, &mut trials, &mut steps) else { break };
        told = settled;
    }
    let open = told.iter().filter(|told| told.is_none()).count();
    let further = match open {
        0 => String::new(),
        1 => " For one speaker they must suppose something of two at once.".to_owned(),
        open => format!(" For {open} speakers they must suppose something of two at once."),
    };
    let says = match trials {
        0 => format!("One sentence after another settles somebody; there is nothing to guess.{further}"),
        _ => format!(
            "Guests suppose that somebody tells the truth, or does not, and follow the sentences until one contradicts \
             another. {} settle everybody.{further}",
            if trials == 1 { "One such try can".to_owned() } else { format!("About {trials} such tries") },
        ),
    };
    Some(Work::new(trials + steps + 8 * open, says))
}

/// Tries suppositions until one contradicts itself, and so settles something: that everything agrees with another is no
/// proof. A person begins with those who speak of one other only.
fn trial(claims: &[Claim], liars: Option<usize>, told: &Told, trials: &mut usize, steps: &mut usize) -> Option<Told> {
    let mut order: Vec<usize> = (0..claims.len()).filter(|at| told[*at].is_none()).collect();
    order.sort_by_key(|at| !matches!(claims[*at], Claim::True(_) | Claim::False(_)));
    for at in order {
        for guess in [true, false] {
            let mut tried = told.clone();
            tried[at] = Some(guess);
            *trials += 1;
            let (sound, taken) = follow(claims, liars, &mut tried);
            *steps += taken;
            if !sound {
                let mut settled = told.clone();
                settled[at] = Some(!guess);
                *steps += follow(claims, liars, &mut settled).1;
                return Some(settled);
            }
        }
    }
    None
}

/// Fills in what follows; whether nothing contradicts itself, and how many speakers that settled.
fn follow(claims: &[Claim], liars: Option<usize>, told: &mut Told) -> (bool, usize) {
    let open = |told: &Told| told.iter().filter(|told| told.is_none()).count();
    let before = open(told);
    loop {
        let left = open(told);
        for (at, claim) in claims.iter().enumerate() {
            if !implied(at, *claim, told) {
                return (false, before - open(told));
            }
        }
        if let Some(liars) = liars {
            let no = told.iter().filter(|told| **told == Some(false)).count();
            let rest = open(told);
            if no > liars || no + rest < liars {
                return (false, before - rest);
            }
            if no == liars || no + rest == liars {
                told.iter_mut().filter(|told| told.is_none()).for_each(|told| *told = Some(no == liars));
            }
        }
        if open(told) == left {
            return (true, before - left);
        }
    }
}

/// Settles what is the same in every case in which what `at` says is as true as `at` is; false when there is none.
fn implied(at: usize, claim: Claim, told: &mut Told) -> bool {
    let (a, b) = match claim {
        Claim::True(a) | Claim::False(a) => (a, a),
        Claim::Alike(a, b) | Claim::Unlike(a, b) | Claim::NotBoth(a, b) => (a, b),
    };
    let mut about = vec![at, a, b];
    about.sort_unstable();
    about.dedup();
    let mut cases: Vec<Vec<bool>> = Vec::new();
    for bits in 0..1_u8 << about.len() {
        let mut case: Vec<bool> = told.iter().map(|told| told.unwrap_or(false)).collect();
        let fits = about.iter().enumerate().all(|(place, speaker)| {
            let value = bits >> place & 1 == 1;
            let Some(slot) = case.get_mut(*speaker) else { return false };
            *slot = value;
            told[*speaker].is_none_or(|told| told == value)
        });
        if fits && claim.holds(&case) == Some(case[at]) {
            cases.push(case);
        }
    }
    let Some(first) = cases.first() else { return false };
    for speaker in about {
        if cases.iter().all(|case| case[speaker] == first[speaker]) {
            told[speaker] = Some(first[speaker]);
        }
    }
    true
}
