use std::collections::BTreeMap;
use std::io::Write;
use std::path::Path;

use super::check::{blocks, summary, write_findings};
use super::outcome::{BLOCKED, CLEAN, Outcome};
use crate::bundle::{self, Opened, Redone, Side};
use crate::checks::{Finding, Proof};
use crate::diag::{Anchor, Hinted, Level, Severity, Trouble};
use crate::files::{Disk, Files as _, VPath};
use crate::ids::ThemeId;
use crate::kit::edit::apply_all;
use crate::print::Press;
use crate::propose::{Wish, propose};

/// What the command line asks for.
pub(super) struct Request<'a> {
    pub kit: Option<&'a Path>,
    pub theme: &'a str,
    pub out: &'a Path,
    pub keep_codes: bool,
    pub mend: bool,
    /// Each "old=new".
    pub symbols: &'a [String],
}

/// Puts a kit into another theme, in a folder of its own, with each piece before and after side by side.
pub(super) fn run(request: &Request<'_>, out: &mut dyn Write) -> Outcome {
    let opened = bundle::open(request.kit)?;
    let theme = ThemeId::new(request.theme).unwrap_or_else(|| ThemeId::from_text(request.theme));
    let mut redone = bundle::redone(&opened, &theme, request.mend, &chosen(request.symbols)?)?;
    // Before anything long is done; what lies there is looked at again when the kit is saved.
    bundle::empty(request.out)?;
    let names = (opened.theme.theme.name.clone(), redone.opened.theme.theme.name.clone());
    writeln!(out, "\"{}\" goes from {} to {}", opened.kit.title, names.0, names.1)?;
    for trouble in &redone.troubles {
        writeln!(out, "not taken over: {trouble}\n")?;
    }
    exchanged(&redone, out)?;
    if !request.keep_codes {
        codes(&mut redone, out)?;
    }
    let press = bundle::press_of(&redone.opened)?;
    let proof = bundle::prove(&redone.opened, &press, &Level::ALL)?;
    let fresh = !request.out.exists();
    let made = written(request.out, (&opened, &redone.opened), &names, (&proof, &press));
    if made.is_err() && fresh {
        // Half a kit would be in the way of the next try; that it may stay behind is no second error.
        let _ = Disk::new(request.out).remove_folder(&VPath::root());
    }
    made?;
    mended(&redone, out)?;
    super::codes::old_hints(&redone.opened.kit, out)?;
    writeln!(out, "{}\n", summary(&proof))?;
    let told = proof.findings.iter().filter(|found| found.severity != Severity::Notes);
    let (told, follow): (Vec<_>, Vec<_>) = told.cloned().partition(|found| !follows(&redone, found));
    write_findings(&told, out)?;
    if !follow.is_empty() {
        writeln!(out, "{} more findings follow from the symbols that the theme lacks\n", follow.len())?;
    }
    match redone.leftovers.len() {
        0 => writeln!(out, "nothing of the old season is left")?,
        1 => writeln!(out, "one place still speaks of the old season: see leftover-word above")?,
        left => writeln!(out, "{left} places still speak of the old season: see leftover-word above")?,
    }
    if !request.mend && redone.leftovers.iter().any(|leftover| leftover.by_rule) {
        writeln!(out, "--mend puts slots and new names in their place where no question is open")?;
    }
    let folder = request.out.display();
    writeln!(out, "made {folder}: kit.ron, and each piece before and after in side-by-side/")?;
    writeln!(out, "open it:   inklatch {folder}")?;
    Ok(if blocks(&proof) || !redone.troubles.is_empty() { BLOCKED } else { CLEAN })
}

/// Writes the new kit, and each piece before and after.
fn written(
    folder: &Path,
    (old, new): (&Opened, &Opened),
    names: &(String, String),
    (proof, press): (&Proof, &Press),
) -> Hinted<()> {
    bundle::save_in(new, folder)?;
    let Some(after) = proof.level(Level::Standard) else { return Ok(()) };
    let before = crate::party::Party::new(&old.kit, &old.theme, Level::Standard)?;
    let old_press = bundle::press_of(old)?;
    let pages = bundle::side_by_side(
        Side { name: &names.0, party: &before, press: &old_press },
        Side { name: &names.1, party: &after.party, press },
    )?;
    let disk = Disk::new(folder);
    for (number, page) in pages.iter().enumerate() {
        disk.write(&VPath::new(&format!("side-by-side/{:02}.png", number + 1))?, &page.png()?)?;
    }
    Ok(())
}

/// Whether a finding only says again that the theme has too few symbols.
fn follows(redone: &Redone, found: &Finding) -> bool {
    let (kit, theme) = (&redone.opened.kit, &redone.opened.theme.theme);
    redone.troubles.iter().any(|trouble| trouble.place.as_deref() == Some("symbols"))
        && match &found.anchor {
            Anchor::Lock(id) => {
                found.name == "leftover-art" && kit.lock(id).is_some_and(|lock| !theme.symbols.contains_key(&lock.mark))
            }
            _ => found.message.contains("has no symbol `"),
        }
}

/// The author's choice of symbols: each "old=new".
fn chosen(symbols: &[String]) -> Hinted<BTreeMap<String, String>> {
    let pairs = symbols.iter().map(|pair| {
        let named = pair.split_once('=').map(|(old, new)| (old.trim().to_owned(), new.trim().to_owned()));
        named.ok_or_else(|| Trouble::new(format!("\"{pair}\" names no two symbols")).hint("write --symbol crab=moon"))
    });
    pairs.collect()
}

/// What was mended by rule, each place.
fn mended(redone: &Redone, out: &mut dyn Write) -> std::io::Result<()> {
    match redone.mended.len() {
        0 => return Ok(()),
        1 => writeln!(out, "mended one place; read it before you print:")?,
        count => writeln!(out, "mended {count} places; read them before you print:")?,
    }
    for place in &redone.mended {
        writeln!(out, "  {}: {} -> {} (\"{}\")", place.anchor, place.was, place.is, place.around)?;
    }
    writeln!(out)
}

/// What setups and marks now name in place of what they named.
fn exchanged(redone: &Redone, out: &mut dyn Write) -> std::io::Result<()> {
    let dressed = &redone.opened.kit.dressed;
    for (what, names) in [("symbol", &dressed.symbols), ("colour", &dressed.colours)] {
        for (old, new) in names {
            writeln!(out, "  {what} {old} -> {new}")?;
        }
    }
    Ok(())
}

/// Gives the kit new codes. Where none can be found the old ones stay, and it is said why.
fn codes(redone: &mut Redone, out: &mut dyn Write) -> Result<(), super::outcome::Fail> {
    let wish = Wish { seed: redone.opened.kit.seed.wrapping_add(1), ..Wish::default() };
    let proposal = match propose(&redone.opened.kit, &redone.opened.theme, &wish) {
        Ok(proposal) => proposal,
        Err(Trouble { message, hints, .. }) => {
            writeln!(out, "  the codes stay as they are: {message}")?;
            for hint in hints {
                writeln!(out, "    hint: {hint}")?;
            }
            return Ok(());
        }
    };
    let edits = proposal.edits(&redone.opened.kit, &redone.opened.theme);
    apply_all(&mut redone.opened.kit, edits);
    for change in &proposal.changes {
        writeln!(out, "  code of {}: {} -> {}", change.puzzle, change.old, change.new)?;
    }
    for kept in &proposal.kept {
        let answer = redone.opened.kit.puzzle(&kept.puzzle).map_or("", |puzzle| puzzle.answer.as_str());
        writeln!(out, "  code of {} stays {answer}: {}", kept.puzzle, kept.why)?;
        if !kept.help.is_empty() {
            writeln!(out, "    hint: {}", kept.help)?;
        }
    }
    Ok(())
}
