use super::{Draft, Facts, FixKind, Sink};
use crate::diag::{Anchor, Level, PuzzleField};
use crate::kit::edit::{self, Edit};
use crate::kit::{LockKind, Puzzle};
use crate::limits;

check!(
    /// ## What it does
    /// Flags a number of the kit that no party can have: nobody plays, the least is more than the most, a time of no
    /// minutes or below, a lock without wheels, an age that nobody reaches. Sizes and copies of printed pieces are told by
    /// `piece-unmade`.
    ///
    /// ## Why it matters at the table
    /// It is printed as it stands: on the cover, in the host guide, on the shopping list; and what is worked out from it is
    /// wrong as well.
    ///
    /// ## How to mend
    /// Write what is meant; each finding says what can stand there.
    ImpossibleNumber, "impossible-number", Blocks, "a number that no party can have",
    "it is printed as it stands, and what is worked out from it is wrong as well", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    kit(facts, sink);
    locks(facts, sink);
    for puzzle in &facts.kit.puzzles {
        times(puzzle, facts.party.level, sink);
    }
    let rules = facts.kit.levels.of(facts.party.level);
    if rules.open_steps > limits::HINT_STEPS {
        let message = format!("at {} {} hint steps lie open from the start", facts.party.level.word(), rules.open_steps);
        let help = format!("a ladder has {0} steps: write `open_steps` from 0 to {0}", limits::HINT_STEPS);
        sink.add(Draft::new(Anchor::Kit, message).help(help));
    }
}

/// Players, ages and minutes of the kit.
fn kit(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    let own = edit::Facts::of(kit);
    let swapped = |(one, other): (u8, u8)| (other, one);
    range("players", "guests", kit.players, limits::GUESTS, "(4, 8)", sink, || {
        vec![Edit::Facts(Box::new(edit::Facts { players: swapped(kit.players), ..own.clone() }))]
    });
    range("ages", "years", kit.ages, limits::AGE, "(9, 12)", sink, || {
        vec![Edit::Facts(Box::new(edit::Facts { ages: swapped(kit.ages), ..own.clone() }))]
    });
    let most = limits::PLAY_MINUTES;
    if kit.minutes == 0 || f64::from(kit.minutes) > most {
        let message = format!("the play is to take {} minutes", kit.minutes);
        sink.add(Draft::new(Anchor::PlayTime, message).help(format!("write `minutes` from 1 to {most}, for example 60")));
    }
    for level in Level::ALL {
        if let Some(minutes) = kit.levels.of(level).minutes.filter(|minutes| *minutes == 0 || f64::from(*minutes) > most) {
            let message = format!("`levels`, `{}`: the play is to take {minutes} minutes", level.word());
            sink.add(Draft::new(Anchor::Levels, message).help(format!("write `minutes` from 1 to {most}, or leave it out")));
        }
    }
    let most = limits::PREP_MINUTES;
    if let Some(minutes) = kit.prep_minutes.filter(|minutes| *minutes == 0 || *minutes > most) {
        let help = format!("write `prep_minutes` from 1 to {most} (four weeks), or leave it out");
        sink.add(Draft::new(Anchor::Kit, format!("the host has {minutes} minutes to prepare")).help(help));
    }
}

/// A least and a most.
fn range(
    field: &str,
    unit: &str,
    (least, most): (u8, u8),
    bound: u8,
    example: &str,
    sink: &mut Sink,
    swapped: impl FnOnce() -> Vec<Edit>,
) {
    let write = format!("write the least first, from 1 to {bound}: `{field}: {example}`");
    let at = |message: String| Draft::new(Anchor::Kit, message).help(write.clone());
    if least == 0 || most == 0 {
        sink.add(at(format!("`{field}` is ({least}, {most}): there are no 0 {unit}")));
    } else if least.max(most) > bound {
        sink.add(at(format!("`{field}` is ({least}, {most}), and {} {unit} are more than can be", least.max(most))));
    } else if least > most {
        let message = format!("`{field}` is ({least}, {most}): the least is more than the most");
        sink.add(at(message).fix(format!("Write ({most}, {least})"), FixKind::Ask, swapped()));
    }
}

fn locks(facts: &Facts<'_>, sink: &mut Sink) {
    for lock in &facts.kit.locks {
        let mut say = |message: String, help: String| sink.add(Draft::new(Anchor::Lock(lock.id.clone()), message).help(help));
        let wheels = lock.kind.wheels();
        if wheels.is_some_and(|wheels| wheels == 0 || wheels > limits::WHEELS) {
            let example = match lock.kind {
                LockKind::Directions(_) => "Directions(4)",
                LockKind::Letters(_) => "Letters([\"ABDHLMPSTW\", \"AEIOULRHNW\", \"AELNORST\"])",
                LockKind::Digits(_) | LockKind::Key | LockKind::Spoken => "Digits(3)",
            };
            let help = format!("a lock has 1 to {} of them: `{example}`", limits::WHEELS);
            say(format!("{} has {}", lock.name, lock.kind.describe()), help);
        }
        if let LockKind::Letters(letters) = &lock.kind {
            for (at, wheel) in letters.iter().enumerate() {
                let count = wheel.chars().count();
                if !(2..=limits::WHEEL_SYMBOLS).contains(&count) {
                    let help = format!("write what stands on it, 2 to {} letters: \"ABDHLMPSTW\"", limits::WHEEL_SYMBOLS);
                    say(format!("wheel {} of {} carries {count} letters", at + 1, lock.name), help);
                }
                let twice = wheel.char_indices().find(|(at, c)| wheel.get(..*at).is_some_and(|before| before.contains(*c)));
                if let Some((_, letter)) = twice {
                    let message = format!("wheel {} of {} carries {letter} twice", at + 1, lock.name);
                    say(message, "a wheel carries each letter once: write what stands on the lock at hand".to_owned());
                }
            }
        }
        if usize::from(lock.hole) > limits::HASP {
            let help = format!("a hasp has up to {} holes: write `hole` from 1, or leave it out", limits::HASP);
            say(format!("{} hangs in hole {}", lock.name, lock.hole), help);
        }
    }
}

/// The minutes of a puzzle that hold at a level.
fn times(puzzle: &Puzzle, level: Level, sink: &mut Sink) {
    let own = puzzle.change(level).and_then(|change| change.minutes);
    let bad = |minutes: f64| !minutes.is_finite() || minutes <= 0.0 || minutes > limits::PLAY_MINUTES;
    let at = || Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Whole);
    let write = |field: &str| format!("write `{field}` of more than 0 and up to {}, or leave it out", limits::PLAY_MINUTES);
    let (minutes, whose) = match own {
        Some(minutes) => (Some(minutes), format!("`{}`, `minutes`", level.word())),
        None => (puzzle.minutes, "`minutes`".to_owned()),
    };
    if let Some(minutes) = minutes.filter(|minutes| bad(*minutes)) {
        let message = format!("{whose} of \"{}\" is {minutes}", puzzle.title);
        sink.add(Draft::new(at(), message).help(write("minutes")));
        return;
    }
    let Some(slow) = puzzle.slow_minutes else { return };
    if bad(slow) {
        let message = format!("`slow_minutes` of \"{}\" is {slow}", puzzle.title);
        sink.add(Draft::new(at(), message).help(write("slow_minutes")));
    } else if let Some(half) = puzzle.minutes.filter(|half| *half > slow) {
        let message = format!(
            "half of the groups need {half} minutes for \"{}\", and nine of ten are to have it within {slow}",
            puzzle.title
        );
        sink.add(Draft::new(at(), message).help("write `slow_minutes` of more than `minutes`"));
    }
}
