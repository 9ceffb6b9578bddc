use std::io::Write;
use std::path::Path;

use serde::Serialize;

use super::outcome::{CLEAN, Outcome};
use crate::bundle::{self, Opened};
use crate::checks::{Facts, find, run_one};
use crate::diag::{Hinted, Level, Step, Trouble};
use crate::kit::Kit;
use crate::party::Party;
use crate::rehearse::{Opens, Rehearsal, Stage, compared, minutes, outline, percent, rehearse};
use crate::script::capital;

/// The format number of the JSON output: it grows when a field changes its meaning or goes.
const FORMAT: u32 = 1;

/// Characters of the longest bar of the drawn spread.
const BAR: usize = 40;

#[derive(Serialize)]
struct Report<'a> {
    format: u32,
    kit: &'a str,
    /// How many plays have corrected the estimates.
    plays: usize,
    levels: Vec<LevelReport>,
}

#[derive(Serialize)]
struct LevelReport {
    level: Level,
    #[serde(flatten)]
    rehearsal: Rehearsal,
}

/// Rehearses a kit at some levels: with so many evenings, or as many as are usual.
pub(super) fn run(
    kit: Option<&Path>,
    levels: &[Level],
    runs: Option<usize>,
    json: bool,
    out: &mut dyn Write,
) -> Outcome {
    let opened = bundle::open(kit)?;
    let kit = &opened.kit;
    let mut reports = Vec::new();
    for (at, level) in levels.iter().enumerate() {
        let party = Party::new(kit, &opened.theme, *level)?;
        possible(&opened, &party)?;
        let stage = Stage::new(kit, &party.parts(kit), *level).map_err(|trouble| trouble.at(level.word()))?;
        let rehearsal = rehearse(&stage, runs.unwrap_or_else(|| stage.usual_runs()))?;
        if !json {
            if at > 0 {
                writeln!(out)?;
            }
            write_level(&party.spoken(kit), *level, &rehearsal, out)?;
        }
        reports.push(LevelReport { level: *level, rehearsal });
    }
    let plays = kit.plays.plays.len();
    if json {
        let report = Report { format: FORMAT, kit: kit.id.as_str(), plays, levels: reports };
        let json = serde_json::to_string_pretty(&report)
            .map_err(|error| Trouble::new(format!("cannot write the rehearsal as JSON: {error}")))?;
        writeln!(out, "{json}")?;
        return Ok(CLEAN);
    }
    match plays {
        0 => writeln!(
            out,
            "\nAll of it is estimates. Write real plays down in plays.ron (`inklatch explain plays`): they correct them."
        )?,
        1 => writeln!(out, "\nAll of it is estimates, corrected by the one play in plays.ron.")?,
        many => writeln!(out, "\nAll of it is estimates, corrected by the {many} plays in plays.ron.")?,
    }
    Ok(CLEAN)
}

/// Refuses numbers of which no evening can be made.
fn possible(opened: &Opened, party: &Party) -> Hinted<()> {
    let (kit, theme, flow) = (&opened.kit, &opened.theme, &party.flow(&opened.kit));
    let facts = Facts { kit, theme, party, flow, set: &[], rehearsal: None };
    let Some(found) = run_one(find("impossible-number")?, &facts).into_iter().next() else { return Ok(()) };
    let trouble = Trouble::new(found.message).at(found.anchor.to_string());
    Err(found.help.into_iter().fold(trouble, Trouble::hint))
}

fn write_level(kit: &Kit, level: Level, rehearsal: &Rehearsal, out: &mut dyn Write) -> std::io::Result<()> {
    writeln!(out, "{}", capital(level.word()))?;
    for line in outline(kit, rehearsal).into_iter().chain(compared(kit, level, rehearsal)) {
        writeln!(out, "  {line}")?;
    }
    writeln!(out, "\n  minutes to the end")?;
    let most = rehearsal.bars.iter().map(|bar| bar.evenings).max().unwrap_or(1).max(1);
    for bar in &rehearsal.bars {
        let stated = if bar.from < rehearsal.stated && rehearsal.stated <= bar.to { " <- stated" } else { "" };
        let drawn = "#".repeat((bar.evenings * BAR).div_ceil(most));
        writeln!(out, "  {:>4.0}-{:<4.0} {drawn} {}{stated}", bar.from, bar.to, bar.evenings)?;
    }
    writeln!(out, "\n  {:<8} {:>8} {:>8}", "guests", "in time", "half by")?;
    for size in &rehearsal.sizes {
        writeln!(out, "  {:<8} {:>8} {:>8}", size.guests, percent(size.chance), minutes(size.median))?;
    }
    let head = ["puzzle", "1 in 10", "half", "9 in 10", "holds up", "min", "tokens", "minutes from"];
    let [name, quick, half, slow, critical, holds, tokens, from] = head;
    writeln!(out, "\n  {name:<30} {quick:>7} {half:>7} {slow:>7} {critical:>9} {holds:>5} {tokens:>7}  {from}")?;
    for puzzle in &rehearsal.puzzles {
        let title = kit.puzzle(&puzzle.puzzle).map_or(puzzle.puzzle.as_str(), |known| known.title.as_str());
        let spread = puzzle.minutes;
        writeln!(
            out,
            "  {:<30} {:>7} {:>7} {:>7} {:>9} {:>5} {:>7.1}  {}",
            short(title, 30),
            minutes(spread.quick),
            minutes(spread.median),
            minutes(spread.slow),
            percent(puzzle.critical),
            minutes(puzzle.holds),
            puzzle.tokens.iter().take(Step::ALL.len()).sum::<f64>(),
            puzzle.estimate.source.words()
        )?;
    }
    writeln!(
        out,
        "  {:<30} {:>7} {:>7} {:>7} {:>9} {:>5}",
        "reading, looking for things",
        "",
        "",
        "",
        "",
        minutes(rehearsal.search)
    )?;
    writeln!(out, "\n  {:<40} {:>8} {:>8}", "open by minute", "half", "9 in 10")?;
    for past in &rehearsal.past {
        let name = match &past.opens {
            Opens::Lock(id) => kit.lock(id).map_or(id.as_str(), |lock| lock.name.as_str()),
            Opens::Box(id) => kit.box_def(id).map_or(id.as_str(), |item| item.name.as_str()),
        };
        let slow = past.slow.map_or_else(|| "-".to_owned(), |slow| format!("{slow:.0}"));
        writeln!(out, "  {:<40} {:>8.0} {slow:>8}", short(name, 40), past.half)?;
    }
    Ok(())
}

/// A name that fits its column.
fn short(name: &str, most: usize) -> String {
    if name.chars().count() <= most {
        return name.to_owned();
    }
    format!("{}…", name.chars().take(most - 1).collect::<String>().trim_end())
}
