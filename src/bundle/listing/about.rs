//! What a listing says, from the kit's own facts; what the kit does not say is left out.

use serde::Serialize;

use super::credits::credits;
use super::secrets::Secrets;
use crate::bundle::guide::{Source, amount, facts, list, minutes, paragraphs, sentence, unit};
use crate::bundle::manifest::Made;
use crate::checks::LevelProof;
use crate::diag::Level;
use crate::face::Audience;
use crate::kit::Kit;
use crate::mechanics;
use crate::party::Party;
use crate::readings::Verdict;
use crate::script::{capital, parse, typographic};
use crate::sheet::Paper;
use crate::theme::{Edition, Loaded};

/// A listing in words.
#[derive(Clone, Debug, Serialize)]
pub(super) struct About {
    pub(super) title: String,
    pub(super) by: String,
    /// Which printing it is: "Revision 2, 2027-01-31"; may be empty.
    pub(super) revision: String,
    pub(super) brief: Vec<String>,
    /// Name and value.
    pub(super) facts: Vec<(String, String)>,
    pub(super) contents: Vec<String>,
    pub(super) levels: Vec<String>,
    pub(super) needs: Vec<String>,
    pub(super) cost: String,
    pub(super) care: Vec<String>,
    pub(super) changes: Vec<String>,
    pub(super) terms: Vec<String>,
    /// What, and whose it is under which licence.
    pub(super) credits: Vec<(String, String)>,
}

/// The listing of a kit, by one of its levels; `files` are those of the bundle.
pub(super) fn about(
    source: &Source<'_>,
    level: &LevelProof,
    (all, editions): (&[Level], &[Edition]),
    files: &[Made],
    secrets: &Secrets,
) -> About {
    let (kit, theme) = (&source.opened.kit, &source.opened.theme);
    let party = source.party;
    // Nothing that holds an answer or a hint is said, whoever wrote it.
    let safe = |lines: Vec<String>| -> Vec<String> {
        lines
            .into_iter()
            .filter(|line| !line.trim().is_empty() && !secrets.tells(line))
            .map(|line| typographic(&line))
            .collect()
    };
    let one = |line: String| safe(vec![line]).pop().unwrap_or_default();
    let mut told = facts(source);
    // How long the hands are busy is told with the time of drying below.
    told.retain(|(name, _)| name != "Prepare");
    told.push(("Preparation".into(), prepare(source)));
    told.extend(pages(party, files));
    if editions.len() > 1 {
        let words: Vec<String> = editions.iter().map(|edition| edition.word().to_owned()).collect();
        told.push(("Editions".into(), list(&words)));
    }
    told.extend(colour(kit, theme, level).map(|says| ("Colour".into(), says)));
    told.retain(|(_, value)| !secrets.tells(value));
    About {
        title: typographic(&party.script.title),
        by: if kit.author.trim().is_empty() { String::new() } else { format!("By {}", typographic(kit.author.trim())) },
        revision: revision(kit),
        brief: safe(paragraphs(&parse(&party.script.brief).text())),
        facts: told.into_iter().map(|(name, value)| (name, typographic(&value))).collect(),
        contents: safe(contents(kit, party, files)),
        levels: safe(levels(kit, party, all)),
        needs: safe(needs(source)),
        cost: one(sentence(&source.say(&kit.cost))),
        care: safe(care(source)),
        changes: safe(kit.revision.changes.iter().map(|line| sentence(&parse(&source.say(line)).text())).collect()),
        terms: paragraphs(kit.terms.trim()).iter().map(|part| typographic(part)).collect(),
        credits: credits(source.opened).into_iter().map(|(what, says)| (what, typographic(&says))).collect(),
    }
}

fn revision(kit: &Kit) -> String {
    let name = kit.revision.name.trim();
    match (name, kit.revision.day) {
        ("", None) => String::new(),
        ("", Some(day)) => day.to_string(),
        (name, None) => format!("Revision {name}"),
        (name, Some(day)) => format!("Revision {name}, {day}"),
    }
}

fn prepare(source: &Source<'_>) -> String {
    let (hands, ready) = (minutes(source.prep.hands), minutes(source.prep.ready));
    if hands == ready { format!("about {hands}") } else { format!("about {hands} of work within {ready}") }
}

/// How many pages each paper takes, by what they are for.
fn pages(party: &Party, files: &[Made]) -> Vec<(String, String)> {
    let of = |paper: Paper| {
        let own = |audience: &str, guide: bool| -> usize {
            let mine = files.iter().filter(|file| {
                let path = file.path.as_str();
                let kind = !path.contains("-everything-") && path.contains("-guide-") == guide;
                file.paper == Some(paper)
                    && file.level == Some(party.level)
                    && file.edition == Some(party.edition())
                    && file.audience == audience
                    && kind
            });
            mine.filter(|file| file.path.extension() == "pdf").filter_map(|file| file.pages).sum()
        };
        let parts = [
            (own("players", false), "for the room"),
            (own("hints", false), "of hint tokens"),
            (own("host", false), "for the host to make things by"),
            (own("host", true), "of host guide"),
        ];
        let words: Vec<String> =
            parts.iter().filter(|(count, _)| *count > 0).map(|(count, what)| format!("{count} {what}")).collect();
        let name = match paper {
            Paper::Letter => "Pages, US Letter",
            Paper::A4 => "Pages, A4",
        };
        (!words.is_empty()).then(|| (name.to_owned(), list(&words)))
    };
    Paper::ALL.into_iter().filter_map(of).collect()
}

/// Whether colour is needed: each puzzle is read once more from its pieces as a grey printer prints them. None where that
/// cannot be told.
fn colour(kit: &Kit, theme: &Loaded, level: &LevelProof) -> Option<String> {
    let mut needed = false;
    for puzzle in &kit.puzzles {
        let laid = level.party.puzzle(&puzzle.id)?;
        let mine = |id: &str| level.party.piece(id).is_some_and(|piece| piece.group == puzzle.id.as_str());
        let sides = level.set.iter().filter(|set| set.paper.is_none()).flat_map(|set| &set.printed);
        let grey: Vec<_> = sides.filter(|side| mine(&side.piece)).map(|side| side.grey()).collect();
        if grey.is_empty() {
            if mechanics::find(&puzzle.mechanic).ok()?.meta().colour {
                return None;
            }
            continue;
        }
        match level.party.reread(kit, theme, puzzle, grey) {
            Some(Ok(found)) => needed |= found.verdict(&laid.answer) != Verdict::One,
            Some(Err(_)) => needed = true,
            None if mechanics::find(&puzzle.mechanic).ok()?.meta().colour => return None,
            None => {}
        }
    }
    Some(if needed {
        "needed: some puzzles cannot be read in grey".into()
    } else {
        "not needed: every puzzle reads the same in grey".into()
    })
}

fn contents(kit: &Kit, party: &Party, files: &[Made]) -> Vec<String> {
    let copies = |audience: Audience| -> usize {
        party.pieces.iter().filter(|piece| piece.audience == audience).map(|piece| usize::from(piece.copies)).sum()
    };
    let (room, hints, host) = (copies(Audience::Players), copies(Audience::Hints), copies(Audience::Host));
    let many =
        |count: usize, one: &str, more: &str| if count == 1 { format!("1 {one}") } else { format!("{count} {more}") };
    let mut lines = Vec::new();
    if !kit.letter.body.trim().is_empty() {
        lines.push("A story letter that opens the party.".to_owned());
    }
    if !kit.puzzles.is_empty() {
        let puzzles = many(kit.puzzles.len(), "puzzle", "puzzles");
        lines.push(format!("{puzzles}, for {}.", many(kit.locks.len(), "lock", "locks")));
    }
    if room > 0 {
        lines.push(format!("{} to print and cut out.", many(room, "piece", "pieces")));
    }
    if hints > 0 {
        let what = "to hand out one at a time, from where to look to all but the last step";
        lines.push(format!("{} {what}.", many(hints, "hint token", "hint tokens")));
    }
    if host > 0 {
        let what = many(host, "sheet piece that helps", "sheet pieces that help");
        lines.push(format!("{what} the host to make things."));
    }
    if files.iter().any(|file| file.path.as_str().contains("-guide-")) {
        let what =
            "shopping list, preparation hour by hour, set-up place by place, lock table, tokens, answers, cautions";
        lines.push(format!("A host guide: {what}."));
    }
    if files.iter().any(|file| file.path.as_str().starts_with("pieces/")) {
        lines.push("Every piece for the guests as a picture, too (PNG and SVG).".to_owned());
    }
    lines
}

fn levels(kit: &Kit, party: &Party, all: &[Level]) -> Vec<String> {
    let says = |level: &Level| {
        let about = party.say(kit.levels.of(*level).about.trim());
        let about = parse(&about).text();
        let name = capital(level.word());
        if about.is_empty() { sentence(&name) } else { format!("{name}: {}", sentence(&about)) }
    };
    all.iter().map(says).collect()
}

/// What the buyer must own or buy: what is seldom at home first.
fn needs(source: &Source<'_>) -> Vec<String> {
    let line = |line: &crate::prep::ShoppingLine| {
        // What will do instead, and which size matters, the host guide says.
        let plain = short(&source.say(&line.name));
        let name = capital(&plain);
        let mut says = match (line.unit, amount(line.amount)) {
            ("piece", one) if one == "1" => name,
            ("piece", many) => format!("{many} × {plain}"),
            (of, many) => format!("{name}: {many} {}", unit(of, line.amount)),
        };
        if line.at_home {
            says.push_str(", perhaps at home");
        }
        says
    };
    source.prep.shopping.iter().map(line).collect()
}

/// A material's name without what only the host needs to know when buying it.
fn short(name: &str) -> String {
    name.trim_end_matches(", code can be set").to_owned()
}

/// What the cautions of the host guide are about.
fn care(source: &Source<'_>) -> Vec<String> {
    // One name stands for all that a caution is owed for.
    let named = source.prep.cautions.iter().filter_map(|caution| caution.of.first());
    let about: Vec<String> =
        named.map(|name| name.split(['(', ',']).next().unwrap_or(name).trim().to_owned()).collect();
    let about: Vec<String> = about.iter().map(|name| name.split(" with ").next().unwrap_or(name).to_owned()).collect();
    if about.is_empty() {
        return Vec::new();
    }
    vec![
        format!("The host guide has cautions for these and things like them: {}.", list(&about)),
        "Local codes and rules, and the maker’s label on every product, come before anything said there.".into(),
    ]
}
