//! What can be wrong with a theme by itself, whatever kit wears it.
//!
//! The checks of a kit use the same functions for what a kit can suffer from; [`theme_findings`] has them all.

mod colours;
mod letters;
mod names;
mod parts;
mod slots;

pub(super) use colours::{alike_colours, alike_pictures};
pub(super) use names::blame;
use parts::licence;
pub(super) use parts::unread;

use super::{CHECKS, Draft, Finding, Sink, finding};
use crate::diag::{Anchor, Level};
use crate::face::Pictures;
use crate::files::{Files, FontBook};
use crate::print::Press;
use crate::theme::{Lettering, Loaded, Palette};

/// All that is wrong with a theme, whatever kit wears it: what it lacks, what cannot be read, what is too alike or
/// too faint, what its lettering cannot write, which licence is missing. `files` is the theme's own folder, and `folder`
/// what that is called, where it lies on disk.
#[must_use]
pub fn theme_findings(theme: &Loaded, fonts: &FontBook, files: &dyn Files, folder: Option<&str>) -> Vec<Finding> {
    let none = std::collections::BTreeMap::new();
    let palette = Palette::new(&theme.theme.palette, &none);
    let press = Lettering::new(&theme.theme.lettering, &none).and_then(|lettering| Press::new(fonts, &lettering));
    let mut found = Vec::new();
    let mut take = |name: &str, drafts: Vec<Draft>| found.extend(findings_of(name, drafts));
    take("theme-incomplete", unread(theme));
    for trouble in [palette.as_ref().err(), press.as_ref().err()].into_iter().flatten() {
        take("theme-incomplete", vec![Draft::of(Anchor::Theme, trouble).why("no piece of any kit can be printed")]);
    }
    take("theme-incomplete", folder.map_or_else(Vec::new, |folder| names::misplaced(theme, folder)));
    take("theme-incomplete", names::unknown(theme));
    take("colours-alike", alike_colours(theme));
    take("licence-missing", licence(theme, Some(files)));
    if let Ok(palette) = &palette {
        take("theme-incomplete", parts::lacking(theme, palette));
        take("theme-incomplete", names::sizes(theme, palette));
        take("theme-incomplete", slots::misplaced(theme, palette));
        take("theme-incomplete", slots::proportions(theme, palette));
        take("theme-incomplete", slots::classes(theme));
        take("low-contrast", colours::roles(palette));
        let names: Vec<&str> = theme.theme.symbols.keys().map(String::as_str).collect();
        take("pictures-alike", alike_pictures(theme, palette, &Pictures::default(), &names));
        if let Ok(press) = &press {
            take("low-contrast", colours::grounds(theme, palette, press));
        }
    }
    if let Ok(press) = &press {
        take("glyph-missing", letters::lacking(theme, press));
    }
    finding::sorted(found)
}

/// Whether a theme has symbols enough for a kit that uses so many.
#[must_use]
pub fn symbol_findings(theme: &Loaded, used: usize) -> Vec<Finding> {
    findings_of("theme-incomplete", names::too_few(theme, used))
}

/// The findings of a check that a theme has by itself.
fn findings_of(name: &str, drafts: Vec<Draft>) -> Vec<Finding> {
    let Some(check) = CHECKS.iter().find(|check| check.info().name == name) else { return Vec::new() };
    let mut sink = Sink::new(check.info(), Level::Standard);
    drafts.into_iter().for_each(|draft| sink.add(draft));
    // A theme has no play levels.
    sink.into_findings().into_iter().map(|finding| Finding { level: None, ..finding }).collect()
}
