//! What the host guide says, as plain data for the page template `guide.typ`.
//!
//! The words are made here, the look in the template. Nothing of it reaches a player's file.

mod answers;
mod art;
mod before;
mod clock;
mod evening;
mod parts;
mod picture;
mod places;
mod reset;
mod sheets;
mod sizes;
mod spoken;
#[cfg(test)]
mod tests;
mod trouble;
mod words;

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use serde_json::Value;

use crate::bundle::Opened;
use crate::bundle::documents::{file_name, folder, version};
use crate::bundle::manifest::Made;
use crate::diag::{Hinted, Trouble};
use crate::face::{Audience, Stock, clean_svg};
use crate::files::VPath;
use crate::flow::Flow;
use crate::kit::material::DEFERS;
use crate::party::Party;
use crate::prep::PrepPlan;
use crate::rehearse::Rehearsal;
use crate::script::{parse, typographic};
use crate::sheet::Paper;

pub(super) use before::facts;
pub(super) use picture::page as flow_page;
pub(super) use words::{amount, list, minutes, paragraphs, sentence, unit};

/// What the guide is made from.
#[derive(Clone, Copy)]
pub(super) struct Source<'a> {
    pub(super) opened: &'a Opened,
    pub(super) party: &'a Party,
    pub(super) flow: &'a Flow,
    pub(super) prep: &'a PrepPlan,
    /// Simulated evenings at this level, if the end can be reached.
    pub(super) rehearsal: Option<&'a Rehearsal>,
    pub(super) paper: Paper,
    /// How many groups play at once.
    pub(super) groups: u16,
    /// The findings that block, in a line each; empty unless the export was forced.
    pub(super) forced: &'a [String],
    /// The documents of this level, edition and paper but for the guide itself.
    pub(super) files: &'a [&'a Made],
}

/// The guide, finished.
#[derive(Clone, Debug, Serialize)]
struct Guide {
    labels: BTreeMap<&'static str, &'static str>,
    colours: BTreeMap<&'static str, String>,
    marks: BTreeMap<String, String>,
    /// The theme's head and foot of a letter, for the first page.
    art: art::FirstPage,
    kind: String,
    bookmark: &'static str,
    title: String,
    by: String,
    foot: String,
    /// What it is printed on and how, at the foot of every page.
    printed: String,
    /// Whether it is in large print.
    large: bool,
    forced: Vec<String>,
    facts: Vec<(String, String)>,
    brief: Vec<String>,
    minute: Vec<words::Pointed>,
    files: Vec<File>,
    printing: String,
    needs_note: String,
    shopping: Vec<before::Item>,
    cost: String,
    sheets_note: String,
    sheets: Vec<sheets::SheetRow>,
    prep_note: String,
    prep: Vec<before::Task>,
    chart: before::Chart,
    locks_note: String,
    locks: Vec<before::LockRow>,
    setup_note: words::Pointed,
    places: Vec<places::PlaceText>,
    say: Vec<String>,
    rounds_note: String,
    rounds: Vec<evening::RoundText>,
    flow: picture::Pictures,
    tokens_note: Vec<String>,
    quiet: Vec<evening::QuietRow>,
    clock_note: String,
    clock: Vec<clock::ClockRow>,
    steps: Vec<evening::StepName>,
    tokens: Vec<evening::TokenText>,
    answers_note: String,
    answers: Vec<answers::AnswerText>,
    mishaps_note: &'static str,
    mishaps: Vec<trouble::Mishap>,
    reset_note: String,
    reset: Vec<reset::Part>,
    debrief: Vec<&'static str>,
    cautions_note: String,
    cautions: Vec<answers::CautionText>,
}

#[derive(Clone, Debug, Serialize)]
struct File {
    what: String,
    /// How many; empty for this guide, which counts its own.
    pages: String,
}

/// The guide's data.
///
/// # Errors
/// When a lock's mark cannot be drawn in the palette.
pub(super) fn data(source: &Source<'_>) -> Hinted<Value> {
    let Source { opened, party, paper, .. } = *source;
    let kit = &opened.kit;
    let title = party.script.title.clone();
    let level = version(party);
    let places = places::places(source);
    let reset = reset::parts(source, &places);
    let guide = Guide {
        labels: words::LABELS.iter().copied().collect(),
        colours: party.palette.iter().map(|(role, colour)| (role, colour.to_string())).collect(),
        marks: marks(source)?,
        art: art::first_page(source)?,
        kind: format!("Host guide · {level} · for {}", words::paper(paper)),
        bookmark: "Host guide",
        by: words::by(kit),
        foot: format!("{title} · host guide · {level} · not for guests"),
        printed: format!("{} · print at 100 % · {}", words::paper(paper), Stock::Plain.words()),
        large: party.large(),
        title,
        forced: source.forced.to_vec(),
        facts: facts(source),
        brief: paragraphs(&parse(&party.script.brief).text()),
        minute: before::minute(source),
        files: files(source)?,
        printing: format!("{} {}", sheets::sides(source), words::PRINTING),
        needs_note: words::needs(source.groups),
        shopping: before::shopping(source),
        cost: sentence(&source.say(&kit.cost)),
        sheets_note: sheets::note(source),
        sheets: sheets::rows(source),
        prep_note: before::prep_note(source),
        prep: before::prep(source),
        chart: before::chart(source),
        locks_note: spoken::note(kit),
        locks: before::locks(source),
        setup_note: words::setup(kit.nests(), party.large()),
        places,
        say: evening::say(source),
        rounds_note: evening::rounds_note(source),
        rounds: evening::rounds(source),
        flow: picture::pictures(source),
        tokens_note: evening::tokens_note(source),
        quiet: evening::quiet(source),
        clock_note: clock::note(source),
        clock: clock::rows(source),
        steps: evening::steps(),
        tokens: evening::tokens(source),
        answers_note: words::ANSWERS.to_owned(),
        answers: answers::answers(source),
        mishaps_note: words::MISHAPS,
        mishaps: trouble::mishaps(source),
        reset_note: reset::note(source),
        reset,
        debrief: words::DEBRIEF.to_vec(),
        cautions_note: format!("{} {DEFERS}", words::CAUTIONS),
        cautions: answers::cautions(source),
    };
    let mut data =
        serde_json::to_value(&guide).map_err(|error| Trouble::new(format!("cannot write the host guide: {error}")))?;
    typeset(&mut data);
    Ok(data)
}

/// What to print, this guide last.
fn files(source: &Source<'_>) -> Hinted<Vec<File>> {
    let mut files: Vec<File> = source
        .files
        .iter()
        .map(|file| {
            let pages = file.pages.unwrap_or_default();
            let pages = if pages == 1 { "1 page".to_owned() } else { format!("{pages} pages") };
            File { what: file.path.to_string(), pages }
        })
        .collect();
    let name = file_name(&source.opened.kit, "guide", source.party, source.paper);
    let own = VPath::new(folder(Audience::Host))?.join(&name)?;
    files.push(File { what: own.to_string(), pages: String::new() });
    Ok(files)
}

/// Gives every text its typographic marks. Drawings keep theirs: they are code.
fn typeset(value: &mut Value) {
    match value {
        Value::String(text) => *text = typographic(text).replace("100 %", "100\u{a0}%"),
        Value::Array(items) => items.iter_mut().for_each(typeset),
        Value::Object(fields) => {
            fields
                .iter_mut()
                .filter(|(key, _)| !["marks", "svg", "see"].contains(&key.as_str()))
                .for_each(|(_, value)| typeset(value));
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

impl Source<'_> {
    /// A short text of the kit with its slots filled.
    pub(super) fn say(&self, text: &str) -> String {
        self.party.say(text)
    }
}

/// The drawn symbols of all locks, by name. A mark that the theme does not have is a finding, not an error.
fn marks(source: &Source<'_>) -> Hinted<BTreeMap<String, String>> {
    let names: BTreeSet<&str> = source.opened.kit.locks.iter().map(|lock| lock.mark.as_str()).collect();
    let mut drawn = BTreeMap::new();
    for name in names {
        if let Some(svg) = source.opened.theme.symbol(name) {
            let svg = clean_svg(svg, &source.party.palette).map_err(|trouble| trouble.at(format!("symbol {name}")))?;
            drawn.insert(name.to_owned(), svg.to_string());
        }
    }
    Ok(drawn)
}
