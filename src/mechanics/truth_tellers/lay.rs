use std::collections::BTreeSet;

use rand::RngExt as _;
use rand::seq::{IndexedRandom as _, SliceRandom as _};

use super::{Claim, Setup, Speaker, View, read, work};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{any_symbol, symbols};
use crate::mechanics::work::{Effort, arranged};
use crate::mechanics::{Job, Rng};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    let liars = usize::from(setup.liars);
    let count = answer.len() + liars;
    if liars == 0 {
        return Err(
            Trouble::new("if nobody says what is false, there is nothing to find out").hint("set `liars` to 1 or more")
        );
    }
    if count > limits::SPEAKERS {
        return Err(Trouble::new(format!("{count} speakers are more than a group keeps apart"))
            .hint(format!("take fewer `liars` or wheels: at most {} speakers together", limits::SPEAKERS)));
    }
    let names: BTreeSet<String> = setup.names.iter().map(|name| name.trim().to_lowercase()).collect();
    if names.len() != setup.names.len() || names.contains("") || setup.names.len() < count {
        return Err(Trouble::new(format!(
            "{} wheels and {liars} who say what is false take {count} different names",
            answer.len()
        ))
        .hint("write as many `names`, each different"));
    }
    arranged(setup.work, rng, &mut |rng| fitting(setup, &answer, job, rng), &work::work)
}

/// Speakers whose sentences only one case fits: the one in which those who tell the truth wear the answer.
fn fitting(setup: &Setup, answer: &[char], job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let liars = usize::from(setup.liars);
    let count = answer.len() + liars;
    for _ in 0..limits::GRID_STARTS * limits::GRID_STARTS {
        let mut truthful: Vec<bool> = (0..count).map(|at| at < answer.len()).collect();
        truthful.shuffle(rng);
        let claims: Option<Vec<Claim>> = (0..count).map(|at| claim(at, &truthful, setup.work, rng)).collect();
        let Some(claims) = claims else { continue };
        let liars = setup.tell_count.then_some(liars);
        if read::cases(&claims, liars) != [truthful.clone()] || !varied(&claims) {
            continue;
        }
        let mut symbols = answer.iter().copied();
        let speakers = setup
            .names
            .iter()
            .zip(&truthful)
            .zip(claims)
            .map(|((name, told), says)| {
                let badge = if *told { symbols.next() } else { None };
                let badge = badge.unwrap_or_else(|| any_symbol(job.lock, rng));
                Speaker { name: name.trim().to_owned(), badge, says }
            })
            .collect();
        return Ok(View { speakers, liars });
    }
    Err(Trouble::new("no statements were found that only one case fits")
        .hint("set `tell_count: true`, or take other numbers of wheels and `liars`"))
}

/// So many more chances for a sentence about one other, where the work is to be light.
const SIMPLE: u8 = 14;

/// Something for a speaker to say that is true if the truth is told here and false if not; nobody speaks of
/// themselves, for that tells nothing or contradicts itself. Light work is made of sentences about one other, mostly.
fn claim(at: usize, truthful: &[bool], effort: Effort, rng: &mut Rng) -> Option<Claim> {
    let others: Vec<usize> = (0..truthful.len()).filter(|other| *other != at).collect();
    let told = *truthful.get(at)?;
    for _ in 0..limits::GRID_STARTS {
        let (a, b) = (*others.choose(rng)?, *others.choose(rng)?);
        if a == b {
            continue;
        }
        let (a, b) = (a.min(b), a.max(b));
        let all = if effort == Effort::Light { 5 + SIMPLE } else { 5 };
        let claim = match rng.random_range(0..all) {
            at if at >= 5 && at % 2 == 0 => Claim::True(a),
            0 => Claim::True(a),
            at if at == 1 || at >= 5 => Claim::False(b),
            2 => Claim::Alike(a, b),
            3 => Claim::Unlike(a, b),
            _ => Claim::NotBoth(a, b),
        };
        if claim.holds(truthful) == Some(told) {
            return Some(claim);
        }
    }
    None
}

/// Whether no statement stands twice and at least one names a single speaker, where guests can begin.
fn varied(claims: &[Claim]) -> bool {
    let twice = claims.iter().enumerate().any(|(at, claim)| claims[..at].contains(claim));
    !twice && claims.iter().any(|claim| matches!(claim, Claim::True(_) | Claim::False(_)))
}
