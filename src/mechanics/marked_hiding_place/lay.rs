//! Gives the things their signs and writes the note.

use rand::seq::SliceRandom as _;

use super::{Holds, Setup, Slip, Thing, View, read};
use crate::diag::{Hinted, Trouble};
use crate::kit::LockKind;
use crate::kit::file::nearest;
use crate::limits;
use crate::mechanics::{Job, Rng};
use crate::readings::same_answer;

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let names: Vec<&str> = setup.things.iter().map(|thing| thing.name.trim()).collect();
    if !(2..=limits::HIDING_THINGS).contains(&names.len()) {
        return Err(Trouble::new(format!("{} things cannot be told apart by a sign", names.len()))
            .hint(format!("list 2 to {} things", limits::HIDING_THINGS)));
    }
    for (index, name) in names.iter().enumerate() {
        if name.is_empty() {
            return Err(
                Trouble::new(format!("thing {} has no name", index + 1)).hint("write what host and guests call it")
            );
        }
        if names.iter().take(index).any(|other| same_answer(other, name)) {
            return Err(Trouble::new(format!("two things are called \"{name}\"")).hint("give each a name of its own"));
        }
    }
    let at = place(setup, job, &names)?;
    let things = signs(setup, job, &names, rng)?;
    let note = match (setup.note.trim(), things.get(at)) {
        ("", Some(thing)) => {
            format!("Look {} the one with the sign of the {}.", setup.place.word(), thing.word)
        }
        (own, _) => own.to_owned(),
    };
    let slip = (setup.holds == Holds::Slip).then(|| Slip { at, symbols: job.answer.trim().chars().collect() });
    Ok(View { things, note, told_by: setup.told_by, place: setup.place, slip })
}

/// Which thing hides the key or the slip, counted from zero.
fn place(setup: &Setup, job: &Job<'_>, names: &[&str]) -> Hinted<usize> {
    let key = matches!(job.lock, LockKind::Key | LockKind::Spoken);
    let wanted = match (setup.holds, key) {
        (Holds::Key, true) => job.answer,
        (Holds::Slip, false) => setup.at.as_str(),
        (Holds::Key, false) => {
            return Err(Trouble::new("a key is hidden, and the lock has a code")
                .hint("choose a lock that takes a key, or set holds to Slip and `at` to the thing's name"));
        }
        (Holds::Slip, true) => {
            return Err(Trouble::new("a code slip is hidden, and the lock has no code")
                .hint("choose a lock with a code, or set holds to Key"));
        }
    };
    names.iter().position(|name| same_answer(name, wanted)).ok_or_else(|| {
        let mut trouble = Trouble::new(format!("none of the things is called \"{}\"", wanted.trim()));
        if let Some(near) = nearest(wanted.trim(), names) {
            trouble = trouble.hint(format!("did you mean \"{near}\"?"));
        }
        trouble.hint(match setup.holds {
            Holds::Key => "the answer must be the name of a thing, as it stands in `things`",
            Holds::Slip => "`at` must be the name of a thing, as it stands in `things`",
        })
    })
}

/// The things with a sign each: the author's, or one drawn from the symbols that no thing has and no name holds.
fn signs(setup: &Setup, job: &Job<'_>, names: &[&str], rng: &mut Rng) -> Hinted<Vec<Thing>> {
    for thing in setup.things.iter().filter(|thing| !thing.sign.is_empty()) {
        if !job.symbols.contains(&thing.sign.as_str()) {
            let mut trouble = Trouble::new(format!("the theme has no symbol `{}`", thing.sign));
            if let Some(near) = nearest(&thing.sign, job.symbols) {
                trouble = trouble.hint(format!("did you mean `{near}`?"));
            }
            return Err(trouble.hint(format!("its symbols are {}", job.symbols.join(", "))));
        }
    }
    let mut spare: Vec<&str> = job
        .symbols
        .iter()
        .copied()
        .filter(|symbol| setup.things.iter().all(|thing| thing.sign != *symbol))
        .filter(|symbol| {
            let word = read::words(&word_of(symbol));
            !read::holds(&read::words(&setup.note), &word)
                && names.iter().all(|name| !read::holds(&read::words(name), &word))
        })
        .collect();
    spare.sort_unstable();
    spare.shuffle(rng);
    let mut things = Vec::new();
    for (thing, name) in setup.things.iter().zip(names) {
        let sign = if thing.sign.is_empty() {
            spare.pop().map(str::to_owned).ok_or_else(|| {
                Trouble::new("the theme has too few symbols for all things")
                    .hint("list fewer things, or name their signs yourself, or draw more symbols into the theme")
            })?
        } else {
            thing.sign.clone()
        };
        let word = if thing.word.trim().is_empty() { word_of(&sign) } else { thing.word.trim().to_owned() };
        things.push(Thing { name: (*name).to_owned(), sign, word });
    }
    Ok(things)
}

/// The word for a symbol.
pub(super) fn word_of(symbol: &str) -> String {
    symbol.replace('-', " ")
}
