use std::collections::BTreeMap;
use std::io::Write;

use serde::Serialize;

use super::outcome::{CLEAN, Outcome};
use crate::diag::Trouble;
use crate::mechanics::sample::{Facts, answered, sample};
use crate::mechanics::{MECHANICS, Meta};
use crate::theme::{self, Palette};

/// A mechanic in the list.
#[derive(Serialize)]
struct Row {
    #[serde(flatten)]
    meta: &'static Meta,
    /// What it takes, by its sample.
    #[serde(flatten)]
    facts: Facts,
    /// The kinds of locks that it can answer: digits, letters, directions, key, spoken.
    locks: Vec<&'static str>,
    /// What `minutes` and `least_age` rest on.
    estimate: &'static str,
}

/// Lists every mechanic with what guests do, what is printed and what it takes.
pub(super) fn run(json: bool, out: &mut dyn Write) -> Outcome {
    let id = theme::builtin_ids().into_iter().next().ok_or_else(|| Trouble::new("there is no theme"))?;
    let theme = theme::load_builtin(&id)?;
    let palette = Palette::new(&theme.theme.palette, &BTreeMap::new())?;
    let mut rows = Vec::new();
    for mechanic in MECHANICS {
        let facts = sample(*mechanic, &theme, &palette)?.facts;
        let locks = answered(*mechanic, &theme)?;
        rows.push(Row { meta: mechanic.meta(), facts, locks, estimate: "minutes and ages are estimates" });
    }
    if json {
        let json = serde_json::to_string_pretty(&rows)
            .map_err(|error| Trouble::new(format!("cannot write the mechanics as JSON: {error}")))?;
        writeln!(out, "{json}")?;
        return Ok(CLEAN);
    }
    for Row { meta, facts, locks, .. } in &rows {
        writeln!(out, "{}", meta.id)?;
        writeln!(out, "    guests {}", meta.guests)?;
        writeln!(out, "    order: {}", meta.order)?;
        writeln!(out, "    answer: {}", locks_in_words(locks))?;
        writeln!(out, "    prints {}; the host {}", meta.prints, meta.host)?;
        let (least, most) = meta.minutes;
        writeln!(out, "    {least} to {most} minutes, from {} years (estimates)", meta.least_age)?;
        writeln!(out, "    needs {}", needs(facts))?;
    }
    writeln!(out, "\n`inklatch explain NAME` says what can be chosen in each.")?;
    Ok(CLEAN)
}

/// What it takes, in words.
fn needs(facts: &Facts) -> String {
    let mut needs: Vec<String> = Vec::new();
    if facts.paper_only {
        needs.push("paper only".into());
    } else {
        needs.push(std::iter::once("paper").chain(facts.things.iter().copied()).collect::<Vec<_>>().join(", "));
    }
    let tools = facts.tools.iter().filter(|tool| !facts.things.contains(tool));
    needs.extend(tools.map(|tool| format!("as a tool for guests: {tool}")));
    if facts.colour {
        needs.push("guests tell colours apart".into());
    }
    needs.join("; ")
}

/// Kinds of locks in words: "digits, letters, or a word that is said".
pub(super) fn locks_in_words(locks: &[&'static str]) -> String {
    let words: Vec<&str> = locks
        .iter()
        .map(|lock| match *lock {
            "spoken" => "a word that is said",
            "key" => "the hiding place of a key",
            "directions" => "pushes up, down, left, right",
            other => other,
        })
        .collect();
    match words.as_slice() {
        [] => "none by its sample".to_owned(),
        [one] => (*one).to_owned(),
        [all @ .., last] => format!("{} or {last}", all.join(", ")),
    }
}
