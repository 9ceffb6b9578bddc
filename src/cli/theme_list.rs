//! All that one theme has: the names that a kit may use.

use std::collections::BTreeMap;
use std::io::Write;

use serde::Serialize;

use super::wrap::wrap;
use crate::kit::WordForms;
use crate::theme::Theme;

/// The widest line of running text.
const WIDTH: usize = 96;

/// What a theme has, for the JSON of `inklatch themes`.
#[derive(Serialize)]
pub(super) struct Has<'a> {
    symbol_names: Vec<&'a str>,
    colours: &'a BTreeMap<String, String>,
    words: &'a BTreeMap<String, WordForms>,
    season_words: &'a [String],
    frames: Vec<&'a str>,
    ornaments: Vec<&'a str>,
    dressings: &'a BTreeMap<String, BTreeMap<String, String>>,
}

impl<'a> Has<'a> {
    pub(super) fn of(theme: &'a Theme) -> Self {
        Self {
            symbol_names: theme.symbols.keys().map(String::as_str).collect(),
            colours: &theme.colours,
            words: &theme.words,
            season_words: &theme.season_words,
            frames: theme.frames.keys().map(String::as_str).collect(),
            ornaments: theme.ornaments.keys().map(String::as_str).collect(),
            dressings: &theme.dressings,
        }
    }
}

/// Lists what a theme has.
pub(super) fn write(theme: &Theme, out: &mut dyn Write) -> std::io::Result<()> {
    writeln!(out, "Symbols: marks of locks, pictures of legends")?;
    list(theme.symbols.keys().map(String::as_str), out)?;
    writeln!(out, "\nColours that carry meaning, by the name that guests read")?;
    let colours: Vec<String> = theme.colours.iter().map(|(name, hex)| format!("{name} {hex}")).collect();
    list(colours.iter().map(String::as_str), out)?;
    writeln!(
        out,
        "\nWords: `{{{{ name }}}}` in a text of the kit prints the first, `{{{{ name | plural }}}}` the second"
    )?;
    for (name, forms) in &theme.words {
        let many = if forms.many.is_empty() { "" } else { ", " };
        writeln!(out, "    {name:<14} {}{many}{}", forms.one, forms.many)?;
    }
    if !theme.season_words.is_empty() {
        writeln!(out, "\nWords by which the season is known: a kit in another theme should no longer say them")?;
        list(theme.season_words.iter().map(String::as_str), out)?;
    }
    writeln!(out, "\nDressings: what it calls the parts of mechanics; a puzzle's `names` stand in their place")?;
    for (mechanic, words) in &theme.dressings {
        writeln!(out, "    {mechanic}")?;
        for (part, word) in words {
            let word = if word.trim().is_empty() { "(nothing)" } else { word };
            for (at, line) in wrap(word, WIDTH - 26).iter().enumerate() {
                writeln!(out, "        {:<16} {line}", if at == 0 { part } else { "" })?;
            }
        }
    }
    writeln!(out)
}

fn list<'a>(names: impl Iterator<Item = &'a str>, out: &mut dyn Write) -> std::io::Result<()> {
    let all: Vec<&str> = names.collect();
    let all = if all.is_empty() { "none".to_owned() } else { all.join(", ") };
    wrap(&all, WIDTH - 4).iter().try_for_each(|line| writeln!(out, "    {line}"))
}
