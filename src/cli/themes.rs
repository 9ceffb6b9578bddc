use std::io::Write;
use std::path::Path;

use serde::Serialize;

use super::check::write_findings;
use super::outcome::{BLOCKED, CLEAN, Outcome};
use super::theme_list::{self, Has};
use crate::bundle::{self, ThemeFound, author_themes};
use crate::checks::{blocks, symbol_findings};
use crate::diag::{Hinted, Severity, Trouble};
use crate::files::{Disk, Files as _, VPath};
use crate::redress::symbols_used;

/// The format number of the JSON: it grows when a field changes its meaning or goes.
const FORMAT: u32 = 1;

#[derive(Serialize)]
struct Report<'a> {
    format: u32,
    themes: Vec<ThemeJson<'a>>,
}

#[derive(Serialize)]
struct ThemeJson<'a> {
    id: &'a str,
    source: &'static str,
    name: &'a str,
    about: &'a str,
    credit: &'a str,
    symbols: usize,
    /// What it has, by name; none when it cannot be read.
    #[serde(flatten)]
    has: Option<Has<'a>>,
    /// Why it cannot be read; none when it can.
    trouble: Option<String>,
    findings: Vec<FindingJson<'a>>,
}

#[derive(Serialize)]
struct FindingJson<'a> {
    name: &'a str,
    severity: Severity,
    message: &'a str,
    /// Why it matters at the table.
    why: &'a str,
    help: &'a [String],
}

/// Lists the themes at hand, and says what is wrong with each. `place` is a kit, whose own themes then come first, or
/// the folder of one theme, or the id of one at hand: all that it has is then listed.
pub(super) fn run(place: Option<&Path>, json: bool, out: &mut dyn Write) -> Outcome {
    let mut found = match place {
        Some(folder) if Disk::new(folder).exists(&VPath::new("theme.ron")?) => vec![bundle::theme_in(folder)?],
        // A kit that the program carries has no themes of its own.
        Some(kit) if !kit.exists() && bundle::DEMO_KITS.iter().any(|known| kit == Path::new(known)) => {
            bundle::themes(None)?
        }
        Some(id) if !id.exists() && at_hand(id)?.is_some() => at_hand(id)?.into_iter().collect(),
        Some(kit) => {
            let (disk, _) = crate::files::open_folder(kit).map_err(|mut trouble| {
                trouble.hints.push("or name the folder of one theme, with its theme.ron in it".to_owned());
                trouble
            })?;
            bundle::themes(Some(&Disk::new(disk.root())))?
        }
        None => bundle::themes(None)?,
    };
    enough_symbols(place, &mut found);
    if json {
        let report = Report { format: FORMAT, themes: found.iter().map(theme).collect() };
        let text = serde_json::to_string_pretty(&report)
            .map_err(|error| Trouble::new(format!("cannot write the themes as JSON: {error}")))?;
        writeln!(out, "{text}")?;
    } else {
        for theme in &found {
            plain(theme, out)?;
        }
        if let [ThemeFound { loaded: Ok(loaded), .. }] = found.as_slice() {
            theme_list::write(&loaded.theme, out)?;
        } else if let Some(first) = found.first() {
            writeln!(
                out,
                "`inklatch themes {}` lists all that one theme has: symbols, colours, words, dressings.",
                first.id
            )?;
        }
        writeln!(out, "`inklatch explain theme` describes the file. Put your own into themes/ of a kit")?;
        if let Some(folder) = author_themes() {
            writeln!(out, "or into {}.", folder.display())?;
        }
    }
    let bad = found.iter().any(|theme| theme.loaded.is_err() || blocks(&theme.findings));
    Ok(if bad { BLOCKED } else { CLEAN })
}

/// The theme at hand with this id.
fn at_hand(id: &Path) -> Hinted<Option<ThemeFound>> {
    Ok(bundle::themes(None)?.into_iter().find(|theme| id == Path::new(theme.id.as_str())))
}

/// Adds to each theme that it has too few symbols for a kit, if it has.
fn enough_symbols(place: Option<&Path>, found: &mut [ThemeFound]) {
    // A folder that is no kit, or a kit whose theme is not there, has no symbols to count.
    let Some(Ok(opened)) = place.map(|place| bundle::open(Some(place))) else { return };
    let used = symbols_used(&opened.kit, &opened.theme.theme).len();
    for theme in found.iter_mut().filter(|theme| theme.id != opened.kit.theme) {
        if let Ok(loaded) = &theme.loaded {
            theme.findings.splice(0..0, symbol_findings(loaded, used));
        }
    }
}

fn plain(found: &ThemeFound, out: &mut dyn Write) -> std::io::Result<()> {
    let source = found.source.words();
    match &found.loaded {
        Ok(loaded) => {
            let theme = &loaded.theme;
            writeln!(out, "{}    {} ({source})\n    {}", found.id, theme.name, theme.about)?;
            let count = |severity| found.findings.iter().filter(|finding| finding.severity == severity).count();
            writeln!(
                out,
                "    {} frames, {} symbols, {} words; {} block, {} warn, {} note\n",
                theme.frames.len(),
                theme.symbols.len(),
                theme.words.len(),
                count(Severity::Blocks),
                count(Severity::Warns),
                count(Severity::Notes)
            )?;
            write_findings(&found.findings, out)
        }
        // One theme that cannot be read must not hide the others.
        Err(trouble) => writeln!(out, "{}    ({source}) cannot be read: {trouble}\n", found.id),
    }
}

fn theme(found: &ThemeFound) -> ThemeJson<'_> {
    let theme = found.loaded.as_ref().ok().map(|loaded| &loaded.theme);
    ThemeJson {
        id: found.id.as_str(),
        source: found.source.words(),
        name: theme.map_or("", |theme| theme.name.as_str()),
        about: theme.map_or("", |theme| theme.about.as_str()),
        credit: theme.map_or("", |theme| theme.credit.as_str()),
        symbols: theme.map_or(0, |theme| theme.symbols.len()),
        has: theme.map(Has::of),
        trouble: found.loaded.as_ref().err().map(ToString::to_string),
        findings: found
            .findings
            .iter()
            .map(|finding| FindingJson {
                name: finding.name,
                severity: finding.severity,
                message: &finding.message,
                why: &finding.why,
                help: &finding.help,
            })
            .collect(),
    }
}
