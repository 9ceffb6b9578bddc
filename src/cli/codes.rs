use std::collections::BTreeSet;
use std::io::Write;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::outcome::{CLEAN, Outcome};
use crate::bundle::{self, Opened};
use crate::codes::minutes;
use crate::diag::{Hinted, Level, Trouble};
use crate::ids::PuzzleId;
use crate::kit::Kit;
use crate::kit::edit::apply_all;
use crate::kit::file::nearest;
use crate::party::{LockLeft, Party, lock_table};
use crate::propose::{Proposal, Wish, propose};

/// The format number of the JSON output: it grows when a field changes its meaning or goes.
const FORMAT: u32 = 1;

/// What the command line says of a proposal.
pub(super) struct Request<'a> {
    pub kit: Option<&'a Path>,
    pub seed: Option<u64>,
    pub avoid: &'a [String],
    pub avoid_kit: &'a [PathBuf],
    pub keep: &'a [String],
    pub write: bool,
    pub json: bool,
}

#[derive(Serialize)]
struct Report<'a> {
    format: u32,
    kit: &'a str,
    seed: u64,
    #[serde(flatten)]
    proposal: &'a Proposal,
    /// The codes left to try on each lock, with the answers proposed.
    left: &'a [LockLeft],
    /// The file that was written, if any.
    written: Option<&'a str>,
}

/// Proposes codes for a whole kit, and writes them into it when that is asked for.
pub(super) fn run(request: &Request<'_>, out: &mut dyn Write) -> Outcome {
    let opened = bundle::open(request.kit)?;
    let wish = wish(&opened.kit, request)?;
    let proposal = propose(&opened.kit, &opened.theme, &wish)?;
    let mut kit = opened.kit.clone();
    apply_all(&mut kit, proposal.edits(&opened.kit, &opened.theme));
    let party = Party::new(&kit, &opened.theme, Level::Standard)?;
    let left = lock_table(&kit, &party);
    let written = match request.write && !proposal.changes.is_empty() {
        true => Some(bundle::save_changed(&opened, &kit)?),
        false => None,
    };
    if request.json {
        let (kit, seed) = (opened.kit.id.as_str(), wish.seed);
        let report =
            Report { format: FORMAT, kit, seed, proposal: &proposal, left: &left, written: written.as_deref() };
        let json = serde_json::to_string_pretty(&report)
            .map_err(|error| Trouble::new(format!("cannot write the codes as JSON: {error}")))?;
        writeln!(out, "{json}")?;
        return Ok(CLEAN);
    }
    write_proposal(&opened, &party, &proposal, out)?;
    old_hints(&kit, out)?;
    writeln!(out)?;
    write_table(&kit, &party, &left, out)?;
    match (&written, proposal.changes.is_empty()) {
        (Some(place), _) => writeln!(out, "\nwritten to {place}; set the locks anew and print again")?,
        (None, false) => {
            writeln!(out, "\nnothing is changed yet: --write puts these codes into the kit, --seed N draws others")?
        }
        (None, true) => writeln!(out, "\nthere is nothing to change")?,
    }
    Ok(CLEAN)
}

fn wish(kit: &Kit, request: &Request<'_>) -> Hinted<Wish> {
    let mut avoid: Vec<String> = request.avoid.iter().map(|code| code.trim().to_owned()).collect();
    for path in request.avoid_kit {
        let other = bundle::open(Some(path))?;
        avoid.extend(other.kit.puzzles.into_iter().map(|puzzle| puzzle.answer));
    }
    let mut keep = BTreeSet::new();
    for name in request.keep {
        let known = PuzzleId::new(name).filter(|id| kit.puzzle(id).is_some());
        keep.insert(known.ok_or_else(|| {
            let ids: Vec<&str> = kit.puzzles.iter().map(|puzzle| puzzle.id.as_str()).collect();
            let trouble = Trouble::new(format!("there is no puzzle `{name}`"));
            match nearest(name, &ids) {
                Some(near) => trouble.hint(format!("did you mean `{near}`?")),
                None => trouble.hint(format!("the puzzles are {}", ids.join(", "))),
            }
        })?);
    }
    Ok(Wish { seed: request.seed.unwrap_or(kit.seed), avoid, keep })
}

fn write_proposal(opened: &Opened, party: &Party, proposal: &Proposal, out: &mut dyn Write) -> std::io::Result<()> {
    let title = |id: &PuzzleId| opened.kit.puzzle(id).map_or_else(|| id.to_string(), |puzzle| party.say(&puzzle.title));
    for change in &proposal.changes {
        writeln!(out, "{:<28} {:<34} {} -> {}", change.puzzle.as_str(), title(&change.puzzle), change.old, change.new)?;
    }
    for kept in &proposal.kept {
        let answer = opened.kit.puzzle(&kept.puzzle).map_or("", |puzzle| puzzle.answer.as_str());
        writeln!(out, "{:<28} {:<34} stays {answer}: {}", kept.puzzle.as_str(), title(&kept.puzzle), kept.why)?;
        if !kept.help.is_empty() {
            writeln!(out, "{:<28} hint: {}", "", kept.help)?;
        }
    }
    Ok(())
}

/// The hints in the author's own words that name what the new arrangement does not show.
pub(super) fn old_hints(kit: &Kit, out: &mut dyn Write) -> std::io::Result<()> {
    let hints = &kit.dressed.old_hints;
    if hints.is_empty() {
        return Ok(());
    }
    writeln!(
        out,
        "hints in your own words that name what was there before; read them again, or take the mechanic's drafts:"
    )?;
    for hint in hints {
        writeln!(out, "  {}: {} (\"{}\")", hint.at, hint.says.join(", "), hint.text)?;
    }
    Ok(())
}

/// How many codes are left to try on each lock, and how many minutes that takes.
fn write_table(kit: &Kit, party: &Party, left: &[LockLeft], out: &mut dyn Write) -> std::io::Result<()> {
    writeln!(out, "codes left to try, and minutes to try them all at {} seconds each:", crate::codes::SECONDS_PER_TRY)?;
    const HEADS: [&str; 6] =
        ["nothing known", "all but order", "all but a wheel", "after nudge", "after method", "after giveaway"];
    writeln!(out, "{:<34}{}", "lock", HEADS.map(|head| format!(" {head:>15}")).concat())?;
    for row in left {
        let name = kit.lock(&row.lock).map_or_else(|| row.lock.to_string(), |lock| party.say(&lock.name));
        let LockLeft { left, .. } = row;
        let known = [left.nothing, left.unordered, left.but_one].into_iter().chain(left.steps.iter().copied());
        let cells = known.map(|codes| format!(" {:>15}", format!("{codes} ({:.1})", minutes(codes))));
        writeln!(out, "{name:<34}{}", cells.collect::<String>())?;
    }
    Ok(())
}
