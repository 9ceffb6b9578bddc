use super::gather::{OfPuzzle, Rehearsal};
use crate::diag::Level;
use crate::kit::Kit;

/// A share as a whole percentage, which is 0 or 100 only when nothing or all is meant.
#[must_use]
pub fn percent(share: f64) -> String {
    let points = share * 100.0;
    match points {
        none if none <= 0.0 => "0 %".into(),
        all if all >= 100.0 => "100 %".into(),
        few if few < 1.0 => "under 1 %".into(),
        most if most > 99.0 => "over 99 %".into(),
        points => format!("{points:.0} %"),
    }
}

/// Minutes as a person says them: whole from ten on, below with a half.
#[must_use]
pub fn minutes(minutes: f64) -> String {
    if minutes >= 10.0 { format!("{minutes:.0}") } else { format!("{:.1}", minutes).trim_end_matches(".0").to_owned() }
}

/// The puzzle for which the end waits longest, on the average; none when it waits for none.
fn longest(rehearsal: &Rehearsal) -> Option<&OfPuzzle> {
    let first = rehearsal.puzzles.iter().rev().max_by(|a, b| a.holds.total_cmp(&b.holds));
    first.filter(|puzzle| puzzle.holds > 0.0)
}

fn title<'a>(kit: &'a Kit, puzzle: &'a OfPuzzle) -> &'a str {
    kit.puzzle(&puzzle.puzzle).map_or(puzzle.puzzle.as_str(), |known| known.title.as_str())
}

/// Where the time goes and where guests wait, in sentences; titles stand in them as they stand in `kit`.
#[must_use]
pub fn outline(kit: &Kit, rehearsal: &Rehearsal) -> Vec<String> {
    let mut lines = vec![format!(
        "In {} of {} simulated evenings the end is reached within the {:.0} minutes that the kit states (± {:.0} points, \
         two standard errors).",
        percent(rehearsal.chance),
        rehearsal.runs,
        rehearsal.stated,
        (rehearsal.error * 200.0).ceil()
    )];
    lines.push(format!(
        "Half of the groups need {} minutes or less; one in ten is done after {}, and nine in ten after {}.",
        minutes(rehearsal.end.median),
        minutes(rehearsal.end.quick),
        minutes(rehearsal.end.slow)
    ));
    if let Some(puzzle) = longest(rehearsal) {
        lines.push(format!(
            "The end waits most for \"{}\": in {} of the evenings, {} minutes on the average.",
            title(kit, puzzle),
            percent(puzzle.critical),
            minutes(puzzle.holds)
        ));
    }
    lines.push(format!(
        "On the average {:.1} guests have nothing to do, which is {} of everybody's time.",
        rehearsal.idle,
        percent(rehearsal.idle_share)
    ));
    let idle =
        rehearsal.puzzles.iter().rev().max_by(|a, b| a.idle.total_cmp(&b.idle)).filter(|puzzle| puzzle.idle > 0.0);
    if let Some(puzzle) = idle {
        lines.push(format!("Most of that is while \"{}\" is worked on.", title(kit, puzzle)));
    }
    let tokens: f64 = rehearsal.puzzles.iter().flat_map(|puzzle| puzzle.tokens.iter().take(3)).sum();
    let helps: f64 = rehearsal.puzzles.iter().map(|puzzle| puzzle.tokens[3]).sum();
    lines
        .push(format!("{tokens:.1} tokens go in an evening, and the host sits down with the guests {helps:.1} times."));
    lines
}

/// How the real plays at a level compare with the simulated ones, in a sentence; none where nobody has played.
#[must_use]
pub fn compared(kit: &Kit, level: Level, rehearsal: &Rehearsal) -> Option<String> {
    let plays = kit.plays.plays.iter().filter(|play| play.level == level && play.finished);
    let mut took: Vec<f64> = plays.map(|play| play.minutes).collect();
    took.sort_by(f64::total_cmp);
    let (first, last) = (took.first()?, took.last()?);
    let real = match took.len() {
        1 => format!("The one real play at this level took {} minutes", minutes(*first)),
        many if minutes(*first) == minutes(*last) => {
            format!("The {many} real plays at this level took {} minutes each", minutes(*first))
        }
        many => format!("The {many} real plays at this level took {} to {} minutes", minutes(*first), minutes(*last)),
    };
    let (quick, slow) = (minutes(rehearsal.end.quick), minutes(rehearsal.end.slow));
    Some(format!("{real}; eight of ten simulated evenings take {quick} to {slow}."))
}

/// What would bring an evening that runs long into its time: which puzzle to cut or to ease, or which time to state.
#[must_use]
pub fn advice(kit: &Kit, rehearsal: &Rehearsal) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(puzzle) = longest(rehearsal) {
        lines.push(format!(
            "cut or ease \"{}\", for which the end waits {} minutes on the average",
            title(kit, puzzle),
            minutes(puzzle.holds)
        ));
    }
    lines.push(format!("or state {} minutes, in which nine groups of ten are done", in_fives(rehearsal.end.slow)));
    lines
}

/// Minutes as a kit states them: the next multiple of five.
#[must_use]
pub fn in_fives(minutes: f64) -> String {
    format!("{:.0}", fives(minutes))
}

/// The next multiple of five.
#[must_use]
pub fn fives(minutes: f64) -> f64 {
    (minutes / 5.0).ceil() * 5.0
}
