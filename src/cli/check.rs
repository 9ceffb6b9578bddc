use std::io::Write;
use std::path::Path;

use super::check_json;
use super::outcome::{BLOCKED, CLEAN, Outcome};
use crate::bundle::{self, Opened};
use crate::checks::{Finding, FixKind, LevelProof, Proof, fix_safe};
use crate::diag::{Level, Severity};
use crate::readings::Verdict;

/// Readings of one puzzle that the plain output lists; `--json` has them all.
const SHOWN_READINGS: usize = 4;

/// How a kit is checked.
#[derive(Clone, Copy)]
pub(super) struct How {
    /// Whether the output is JSON.
    pub json: bool,
    /// Whether safe mends are made and saved first.
    pub fix: bool,
}

/// Proves a kit and says what was found.
pub(super) fn run(kit: Option<&Path>, levels: &[Level], how: How, out: &mut dyn Write) -> Outcome {
    let mut opened = bundle::open(kit)?;
    let press = bundle::press_of(&opened)?;
    let mut mended = Vec::new();
    let mut proof = if how.fix {
        // Saved only when the mends hold at every level, whatever level is shown.
        let fixed = fix_safe(&opened.kit, &opened.theme, Some(&press), &Level::ALL)?;
        if fixed.kit != opened.kit {
            bundle::save_changed(&opened, &fixed.kit)?;
        }
        (opened.kit, mended) = (fixed.kit, fixed.done);
        if levels.len() == Level::ALL.len() { fixed.proof } else { bundle::prove(&opened, &press, levels)? }
    } else {
        bundle::prove(&opened, &press, levels)?
    };
    proof.findings = bundle::located(&opened, proof.findings);
    if how.json {
        check_json::write(&opened, &proof, &mended, out)?;
    } else {
        for (name, title) in &mended {
            writeln!(out, "mended[{name}]: {title}")?;
        }
        if how.fix {
            writeln!(out, "{}\n", if mended.is_empty() { "no safe mend to make" } else { "the kit is saved" })?;
        }
        for level in &proof.levels {
            write_level(&opened, level, out)?;
        }
        write_findings(&proof.findings, out)?;
        writeln!(out, "{}", summary(&proof))?;
    }
    Ok(if blocks(&proof) { BLOCKED } else { CLEAN })
}

/// Whether anything that was found blocks an export.
pub(super) fn blocks(proof: &Proof) -> bool {
    crate::checks::blocks(&proof.findings)
}

/// All findings, the worst first.
pub(super) fn write_findings(findings: &[Finding], out: &mut dyn Write) -> std::io::Result<()> {
    for finding in findings {
        writeln!(out, "{}[{}]: {}", finding.severity.word(), finding.name, finding.message)?;
        writeln!(out, "  at: {}{}", finding.anchor, finding.only())?;
        if !finding.why.is_empty() {
            writeln!(out, "  why: {}", finding.why)?;
        }
        for help in &finding.help {
            writeln!(out, "  hint: {help}")?;
        }
        if let Some(fix) = finding.fix.as_ref().filter(|fix| fix.kind != FixKind::ShowOnly) {
            let who = if fix.kind == FixKind::Safe { "--fix" } else { "the window" };
            writeln!(out, "  {who} can do this: {}", fix.title)?;
        }
        writeln!(out)?;
    }
    Ok(())
}

fn write_level(opened: &Opened, proof: &LevelProof, out: &mut dyn Write) -> std::io::Result<()> {
    let flow = &proof.flow;
    let end = match (flow.finish_reachable, flow.rounds.len()) {
        (true, 1) => "the finish opens in one round".to_owned(),
        (true, rounds) => format!("the finish opens in {rounds} rounds"),
        (false, _) => "the finish is out of reach".to_owned(),
    };
    writeln!(out, "{}: {end}", proof.party.level.word())?;
    for laid in &proof.party.puzzles {
        let mechanic = opened.kit.puzzle(&laid.id).map_or("", |puzzle| puzzle.mechanic.as_str());
        let verdict = laid.verdict.map_or("cannot be laid out", Verdict::word);
        writeln!(out, "  {:<28} {mechanic:<22} {verdict}", laid.id.as_str())?;
        if laid.verdict.is_some_and(|verdict| verdict != Verdict::One) {
            for reading in laid.readings.list.iter().take(SHOWN_READINGS) {
                writeln!(out, "      {}: {}", reading.answer, reading.why)?;
            }
            let rest = laid.readings.list.len().saturating_sub(SHOWN_READINGS);
            if rest > 0 || laid.readings.more {
                writeln!(out, "      and more")?;
            }
        }
    }
    writeln!(out)
}

/// One line: how many puzzles and findings of each kind.
pub(super) fn summary(proof: &Proof) -> String {
    let count = |severity| proof.findings.iter().filter(|finding| finding.severity == severity).count();
    let puzzles = proof.levels.first().map_or(0, |level| level.party.puzzles.len());
    let sure = |level: &LevelProof| level.party.puzzles.iter().all(|laid| laid.verdict == Some(Verdict::One));
    let readings = if proof.levels.iter().all(sure) { "each with one reading" } else { "not all with one reading" };
    let levels: Vec<&str> = proof.levels.iter().map(|level| level.party.level.word()).collect();
    let noun = if puzzles == 1 { "puzzle" } else { "puzzles" };
    format!(
        "{puzzles} {noun}, {readings} ({}); {} block, {} warn, {} note",
        levels.join(", "),
        count(Severity::Blocks),
        count(Severity::Warns),
        count(Severity::Notes)
    )
}
