use std::io::Write;

use serde::Serialize;

use super::outcome::Fail;
use crate::bundle::Opened;
use crate::checks::{Finding, FixKind, LevelProof, Proof};
use crate::codes::minutes;
use crate::diag::{Anchor, Level, Severity, Trouble};
use crate::flow::facts::{ClosePair, EarlyTool, Fact, Stretch, facts};
use crate::flow::{Chain, LockLoop, Round, Spare};
use crate::mechanics::work::Work;
use crate::party::{LockLeft, lock_table};
use crate::readings::{Readings, Verdict};

/// The format number of this output: it grows when a field changes its meaning or goes.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Report<'a> {
    format: u32,
    kit: &'a str,
    theme: &'a str,
    blocks: usize,
    warns: usize,
    notes: usize,
    mended: Vec<MendedJson<'a>>,
    findings: Vec<FindingJson<'a>>,
    levels: Vec<LevelJson<'a>>,
}

#[derive(Serialize)]
struct MendedJson<'a> {
    name: &'a str,
    done: &'a str,
}

#[derive(Serialize)]
struct CodesJson {
    #[serde(flatten)]
    row: LockLeft,
    minutes: f64,
}

#[derive(Serialize)]
struct FindingJson<'a> {
    name: &'a str,
    severity: Severity,
    /// None when every level that was proven has it, or the message names those that have it.
    level: Option<Level>,
    anchor: &'a Anchor,
    place: String,
    message: &'a str,
    why: &'a str,
    help: &'a [String],
    fix: Option<&'a str>,
    safe: bool,
}

#[derive(Serialize)]
struct LevelJson<'a> {
    level: Level,
    puzzles: Vec<PuzzleJson<'a>>,
    codes: Vec<CodesJson>,
    reachable: Reachable<'a>,
    rounds: &'a [Round],
    loops: &'a [LockLoop],
    finish: bool,
    /// How many puzzles are open at once, round by round.
    open: Vec<usize>,
    /// The longest stretch of rounds with one open puzzle; none when there is no such round.
    single_file: Option<Stretch>,
    /// Puzzles that take longest one after the other, and their minutes by the estimates.
    chain: &'a Chain,
    /// What can be reached but the finish does not need.
    spare: &'a Spare,
    /// Tools that are to hand long before they are needed.
    early_tools: &'a [EarlyTool],
    /// Things that were to lie apart and lie at one place.
    too_close: &'a [ClosePair],
    /// The same in sentences.
    facts: Vec<Fact>,
}

#[derive(Serialize)]
struct PuzzleJson<'a> {
    id: &'a str,
    mechanic: &'a str,
    /// None when it could not be laid out; `trouble` then says why.
    verdict: Option<Verdict>,
    trouble: Option<String>,
    readings: &'a Readings,
    /// None where the mechanic counts no work.
    work: Option<&'a Work>,
}

/// Ids of what guests can reach or open.
#[derive(Serialize)]
struct Reachable<'a> {
    boxes: Vec<&'a str>,
    locks: Vec<&'a str>,
    puzzles: Vec<&'a str>,
    props: Vec<&'a str>,
    notes: Vec<&'a str>,
}

/// Writes the proof as JSON.
pub(super) fn write(
    opened: &Opened,
    proof: &Proof,
    mended: &[(&'static str, String)],
    out: &mut dyn Write,
) -> Result<(), Fail> {
    let count = |severity| proof.findings.iter().filter(|finding| finding.severity == severity).count();
    let report = Report {
        format: FORMAT,
        kit: opened.kit.id.as_str(),
        theme: opened.theme.theme.id.as_str(),
        blocks: count(Severity::Blocks),
        warns: count(Severity::Warns),
        notes: count(Severity::Notes),
        mended: mended.iter().map(|(name, done)| MendedJson { name, done }).collect(),
        findings: proof.findings.iter().map(finding).collect(),
        levels: proof.levels.iter().map(|proven| level(opened, proven)).collect(),
    };
    let json = serde_json::to_string_pretty(&report)
        .map_err(|error| Trouble::new(format!("cannot write the findings as JSON: {error}")))?;
    writeln!(out, "{json}")?;
    Ok(())
}

fn finding(finding: &Finding) -> FindingJson<'_> {
    FindingJson {
        name: finding.name,
        severity: finding.severity,
        level: finding.level,
        anchor: &finding.anchor,
        place: finding.anchor.to_string(),
        message: &finding.message,
        why: &finding.why,
        help: &finding.help,
        fix: finding.fix.as_ref().map(|fix| fix.title.as_str()),
        safe: finding.fix.as_ref().is_some_and(|fix| fix.kind == FixKind::Safe),
    }
}

fn level<'a>(opened: &'a Opened, proven: &'a LevelProof) -> LevelJson<'a> {
    let flow = &proven.flow;
    let puzzles = proven.party.puzzles.iter().map(|laid| PuzzleJson {
        id: laid.id.as_str(),
        mechanic: opened.kit.puzzle(&laid.id).map_or("", |puzzle| puzzle.mechanic.as_str()),
        verdict: laid.verdict,
        trouble: laid.laid.as_ref().err().map(ToString::to_string),
        readings: &laid.readings,
        work: laid.work.as_ref(),
    });
    let codes = lock_table(&opened.kit, &proven.party)
        .into_iter()
        .map(|row| CodesJson { minutes: minutes(row.left.nothing), row });
    LevelJson {
        level: proven.party.level,
        puzzles: puzzles.collect(),
        codes: codes.collect(),
        reachable: Reachable {
            boxes: flow.boxes.keys().map(crate::ids::BoxId::as_str).collect(),
            locks: flow.locks.keys().map(crate::ids::LockId::as_str).collect(),
            puzzles: flow.puzzles.keys().map(crate::ids::PuzzleId::as_str).collect(),
            props: flow.props.keys().map(crate::ids::PropId::as_str).collect(),
            notes: flow.notes.keys().map(crate::ids::NoteId::as_str).collect(),
        },
        rounds: &flow.rounds,
        loops: &flow.loops,
        finish: flow.finish_reachable,
        open: flow.open_per_round(),
        single_file: flow.single_file(),
        chain: &flow.chain,
        spare: &flow.spare,
        early_tools: &flow.early,
        too_close: &flow.close,
        facts: facts(&proven.party.spoken(&opened.kit), flow),
    }
}
