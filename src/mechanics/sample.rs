//! A sample of each mechanic, with answers that it can carry, and what it takes: for lists and galleries.

use rand::{RngExt as _, SeedableRng as _};
use serde::Serialize;

use crate::diag::{Hinted, Trouble};
use crate::face::{Pictures, Piece};
use crate::ids::PuzzleId;
use crate::kit::LockKind;
use crate::kit::material::material;
use crate::limits;
use crate::mechanics::form::{Choice, Shape};
use crate::mechanics::stock::stock;
use crate::mechanics::{AnyMechanic, AnyView, Dressing, Hung, Job, NO_NAMES, Rng};
use crate::theme::{Colour, Loaded, Palette};

/// Materials that any printed kit takes: a puzzle that takes no others is of paper alone.
const PAPER: &[&str] = &["card-paper", "plain-paper", "scissors", "glue", "tape", "pencil", "envelope"];
/// The material of a clear sheet.
const FILM: &str = "printer-film";

/// What a mechanic takes, as far as its sample shows.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Facts {
    /// Paper, what cuts and joins it, and a pencil are enough.
    pub paper_only: bool,
    /// A sheet must be printed on clear film.
    pub film: bool,
    /// Guests tell colours apart.
    pub colour: bool,
    /// Tools that guests need, by the names of their materials.
    pub tools: Vec<&'static str>,
    /// What the host needs beyond paper, scissors and a pencil, by name.
    pub things: Vec<&'static str>,
}

/// A puzzle laid out for show.
#[derive(Debug)]
pub struct Sample {
    /// A lock that it opens.
    pub lock: LockKind,
    /// The answer; none of the kit's.
    pub answer: String,
    /// The puzzle.
    pub view: Box<dyn AnyView>,
    /// What is printed of it.
    pub pieces: Vec<Piece>,
    /// What it takes.
    pub facts: Facts,
    /// The theme's frames on which those pieces stand.
    pub frames: Vec<String>,
}

/// Locks that a kit can be given for a mechanic, the plainest first.
#[must_use]
pub fn locks() -> Vec<LockKind> {
    let wheel = "ABCDEFGHIJKLMNOPQRSTUVWXYZ".to_owned();
    vec![
        LockKind::Digits(3),
        LockKind::Digits(4),
        LockKind::Letters(vec![wheel; 4]),
        LockKind::Directions(4),
        LockKind::Key,
        LockKind::Spoken,
    ]
}

/// A sample in this theme: the default setup, an answer by chance, always the same.
///
/// # Errors
/// When no lock can be found for the mechanic, or the theme lacks what its pieces stand on.
pub fn sample(mechanic: &dyn AnyMechanic, theme: &Loaded, palette: &Palette) -> Hinted<Sample> {
    made(mechanic, &mechanic.default_setup()?, theme, palette)?.ok_or_else(|| {
        Trouble::new(format!("no lock was found for a sample of {}", mechanic.meta().name))
            .hint("choose another mechanic")
    })
}

/// A sample of each form that a mechanic's rules can take: the default setup, the example of its help, and the default
/// with each switch or choice changed alone, each for the first lock that it suits. Setups with their samples.
///
/// # Errors
/// As [`sample`].
pub fn samples(mechanic: &dyn AnyMechanic, theme: &Loaded, palette: &Palette) -> Hinted<Vec<(String, Sample)>> {
    let mut all = Vec::new();
    for setup in setups(mechanic)? {
        all.extend(made(mechanic, &setup, theme, palette)?.map(|sample| (setup, sample)));
    }
    Ok(all)
}

/// A sample with this setup, for the first lock that it suits.
fn made(mechanic: &dyn AnyMechanic, setup: &str, theme: &Loaded, palette: &Palette) -> Hinted<Option<Sample>> {
    let meta = mechanic.meta();
    for lock in locks() {
        let mut rng = Rng::seed_from_u64(limits::SAMPLE_SEED);
        let Some((answer, view)) = carried(mechanic, setup, &lock, theme, &|_| false, &mut rng) else { continue };
        let id = PuzzleId::from_text(meta.id);
        let pictures = &Pictures::default();
        let (lock_name, mark) = ("the lock", "");
        let names = &NO_NAMES;
        let cx =
            Dressing { puzzle: &id, mechanic: meta.id, lock: &lock, lock_name, mark, names, theme, palette, pictures };
        let (mut pieces, prep) = (view.pieces(&cx)?, view.prep(&cx));
        stock(&mut pieces, &prep);
        let mut things: Vec<&'static str> = Vec::new();
        for need in prep.iter().flat_map(|step| &step.needs) {
            if !PAPER.contains(&need.material) && !things.contains(&need.material) {
                things.push(need.material);
            }
        }
        let names = |ids: &[&'static str]| ids.iter().map(|id| material(id).map_or(*id, |known| known.name)).collect();
        let facts = Facts {
            paper_only: things.is_empty() && meta.tools.is_empty(),
            film: things.contains(&FILM),
            colour: meta.colour,
            tools: names(meta.tools),
            things: names(&things),
        };
        let frames = pictures.frames_asked();
        return Ok(Some(Sample { lock, answer, view, pieces, facts, frames }));
    }
    Ok(None)
}

/// The kinds of locks that a mechanic can answer, in a word each, tried out: with the setup as it is when nothing is
/// chosen, with the example of its help, and with each yes, no or choice of its setup changed alone. A setup of another
/// kind may answer more.
///
/// # Errors
/// When the setup cannot be written as RON, which no mechanic brings about.
pub fn answered(mechanic: &dyn AnyMechanic, theme: &Loaded) -> Hinted<Vec<&'static str>> {
    let setups = setups(mechanic)?;
    let mut found: Vec<&'static str> = Vec::new();
    for lock in locks() {
        let word = word(&lock);
        let mut rng = Rng::seed_from_u64(limits::SAMPLE_SEED);
        let mut carries = |setup: &String| carried(mechanic, setup, &lock, theme, &|_| false, &mut rng).is_some();
        if !found.contains(&word) && setups.iter().any(&mut carries) {
            found.push(word);
        }
    }
    Ok(found)
}

/// A kind of lock by what its answer is.
const fn word(lock: &LockKind) -> &'static str {
    match lock {
        LockKind::Digits(_) => "digits",
        LockKind::Letters(_) => "letters",
        LockKind::Directions(_) => "directions",
        LockKind::Key => "key",
        LockKind::Spoken => "spoken",
    }
}

/// The default setup, the example of the help, and the default with one switch or choice changed.
fn setups(mechanic: &dyn AnyMechanic) -> Hinted<Vec<String>> {
    let plain = mechanic.default_setup()?;
    let data = mechanic.setup_data(&plain)?;
    let mut setups = vec![plain.clone()];
    let example = mechanic.meta().help.split("## Example\n").nth(1).and_then(|rest| rest.split("\n## ").next());
    setups.extend(example.map(|example| example.trim().to_owned()));
    for field in mechanic.form()? {
        let others: Vec<serde_json::Value> = match &field.shape {
            Shape::Switch => vec![true.into(), false.into()],
            Shape::Choice(choices) => choices.iter().map(Choice::blank).collect(),
            _ => Vec::new(),
        };
        for value in others {
            let mut changed = data.clone();
            changed[field.name.as_str()] = value;
            setups.extend(mechanic.setup_text(&plain, &changed).ok().filter(|text| !setups.contains(text)));
        }
    }
    Ok(setups)
}

/// An answer by chance that the mechanic carries for this lock, of symbols that it holds by itself ([`AnyMechanic::symbols`]), with the puzzle; answers that `refused` says so of are
/// passed over. None when it carries none, or none was met.
pub fn carried(
    mechanic: &dyn AnyMechanic,
    setup: &str,
    lock: &LockKind,
    theme: &Loaded,
    refused: &dyn Fn(&str) -> bool,
    rng: &mut Rng,
) -> Option<(String, Box<dyn AnyView>)> {
    let symbols: Vec<&str> = theme.theme.symbols.keys().map(String::as_str).collect();
    let colours: Vec<(&str, Colour)> =
        theme.theme.colours.iter().filter_map(|(name, hex)| Some((name.as_str(), Colour::parse(hex)?))).collect();
    // A hasp with three padlocks, for what is spread over the locks of a kit.
    let names = ["the first padlock", "the second padlock", "the third padlock"];
    let hung: Vec<Hung<'_>> = names
        .iter()
        .zip(&symbols)
        .zip(1..)
        .map(|((name, mark), hole)| Hung { name, mark, hole, needed: true })
        .collect();
    let held = mechanic.symbols(setup, lock);
    for turn in 0..limits::SAMPLE_TRIES {
        let answer = drawn(lock, setup, held.as_deref(), turn, rng)?;
        let holds = |symbols: &Vec<char>| answer.chars().all(|symbol| symbols.contains(&symbol));
        if refused(&answer) || !held.as_ref().is_none_or(holds) {
            continue;
        }
        let job = Job { answer: &answer, lock, symbols: &symbols, marks: &[], colours: &colours, hung: &hung };
        if let Ok(view) = mechanic.lay_out(setup, &job, rng) {
            return Some((answer, view));
        }
    }
    None
}

/// Words for locks with letters and for words that are said: short, plain, none of a season.
const WORDS: &[&str] =
    &["LAMP", "WIND", "ROPE", "BELL", "STAR", "DOOR", "NEST", "RAIN", "SAIL", "PATH", "MILL", "LEAF"];

/// An answer for a lock, of digits that are `held` where the mechanic says which; for a key the name of one of the things
/// in the setup.
fn drawn(lock: &LockKind, setup: &str, held: Option<&[char]>, turn: usize, rng: &mut Rng) -> Option<String> {
    let mut pick = |from: &[char]| from.get(rng.random_range(0..from.len().max(1))).copied();
    match lock {
        LockKind::Digits(wheels) => {
            let mut digits: Vec<char> = ('0'..='9').collect();
            digits.retain(|digit| held.is_none_or(|held| held.contains(digit)));
            (0..*wheels).map(|_| pick(&digits)).collect()
        }
        LockKind::Directions(pushes) => (0..*pushes).map(|_| pick(&['U', 'D', 'L', 'R'])).collect(),
        LockKind::Letters(wheels) => {
            // A word where the wheels can show one, else letters by chance.
            let word = WORDS.iter().filter(|word| lock.spells(word)).nth(turn);
            word.map(|word| (*word).to_owned()).or_else(|| {
                wheels.iter().map(|wheel| pick(&wheel.to_uppercase().chars().collect::<Vec<_>>())).collect()
            })
        }
        LockKind::Spoken => WORDS.get(turn).map(|word| (*word).to_owned()),
        LockKind::Key => {
            let names: Vec<&str> = setup.split("name: \"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
            names.get(turn).map(|name| (*name).to_owned())
        }
    }
}
