//! Where in the kit file a setup stands: what its mechanic says of a line of it is told with the file's own line.

use super::Opened;
use crate::checks::Finding;
use crate::diag::{Anchor, Level, PuzzleField};
use crate::kit::Puzzle;
use crate::kit::ron_text::literals;
use crate::limits;

/// How a finding names a place of a setup.
const SETUP: &str = "(setup:";

/// The findings with places of setups told as lines of the kit file; as they were where the file cannot be read or has
/// changed since.
#[must_use]
pub fn located(opened: &Opened, mut findings: Vec<Finding>) -> Vec<Finding> {
    if findings.iter().all(|finding| !finding.message.contains(SETUP)) {
        return findings;
    }
    let Ok(text) = opened.files.read_text(&opened.file, limits::RON_BYTES) else { return findings };
    for finding in &mut findings {
        let Anchor::Puzzle(id, PuzzleField::Setup) = &finding.anchor else { continue };
        let puzzle = opened.kit.puzzle(id);
        let level = finding.level.unwrap_or_default();
        if let Some(message) =
            puzzle.and_then(|puzzle| told(&text, opened.file.as_str(), puzzle, level, &finding.message))
        {
            finding.message = message;
        }
    }
    findings
}

fn told(text: &str, file: &str, puzzle: &Puzzle, level: Level, message: &str) -> Option<String> {
    let (before, rest) = message.split_once(SETUP)?;
    let (place, after) = rest.split_once(')')?;
    let (line, column) = place.split_once(':')?;
    let (line, column): (usize, usize) = (line.parse().ok()?, column.parse().ok()?);
    let start = text.get(..begins(text, puzzle, level)?)?;
    let above = start.matches('\n').count();
    let beside = start.rsplit('\n').next().unwrap_or_default().chars().count();
    let column = if line == 1 { beside + column } else { column };
    Some(format!("{before}({file}:{}:{column}){after}", above + line))
}

/// The byte at which the puzzle's setup begins: the first after its id that reads so.
fn begins(text: &str, puzzle: &Puzzle, level: Level) -> Option<usize> {
    let setup = puzzle.setup_at(level).ron();
    let ids = literals(text).into_iter().filter(|found| found.field == "id" && found.text == puzzle.id.as_str());
    let behind = ids.filter_map(|id| Some((text.get(id.span.end..)?.find(setup)?, id.span.end)));
    behind.min().map(|(distance, from)| from + distance)
}
