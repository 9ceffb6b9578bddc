use serde::Serialize;

use super::places::{beside, place_name};
use super::words::{CLEAR, CLOCK, CLOSED, MINUTES, OPEN, Pointed, ROUNDS, SAY, list, minutes, pointed, sentence};
use super::{Source, sheets, spoken};
use crate::diag::Step;
use crate::ids::SpotId;
use crate::kit::{Kit, LockKind, Place, PropRole, Puzzle};
use crate::rehearse::Opens;
use crate::script::{capital, parse};

/// One round of the fastest play.
#[derive(Clone, Debug, Serialize)]
pub(super) struct RoundText {
    title: String,
    lines: Vec<String>,
}

/// The tokens of one lock.
#[derive(Clone, Debug, Serialize)]
pub(super) struct TokenText {
    mark: String,
    title: String,
    /// Where to look, what to do, all but the last step; empty where there is no token.
    steps: Vec<String>,
}

/// A step of every ladder: its dots and its name.
#[derive(Clone, Debug, Serialize)]
pub(super) struct StepName {
    dots: usize,
    name: String,
}

/// The steps of every ladder.
pub(super) fn steps() -> Vec<StepName> {
    Step::ALL.iter().map(|step| StepName { dots: step.number(), name: capital(step.word()) }).collect()
}

/// What the host says: what is in play first, then what holds at every party.
pub(super) fn say(source: &Source<'_>) -> Vec<String> {
    let kit = &source.opened.kit;
    let named = |person: bool| -> Vec<String> {
        let spots = kit.spots.iter().filter(|spot| spot.person == person && (person || in_play(kit, &spot.id)));
        spots.map(|spot| source.say(&spot.name)).collect()
    };
    let (spots, people) = (named(false), named(true));
    let own: Vec<String> = kit.opening.iter().map(|line| parse(&source.say(line)).text()).collect();
    let mut lines: Vec<String> =
        own.iter().map(|line| line.trim()).filter(|line| !line.is_empty()).map(|line| format!("“{line}”")).collect();
    if lines.is_empty() {
        lines.push(if spots.is_empty() {
            "“What wears a mark is in play. Nothing else is.”".to_owned()
        } else {
            format!("“What you look for is at these places: {}. Nothing else is in play.”", list(&spots))
        });
        if !people.is_empty() {
            lines.push(format!("“With you in the room: {}. A helper waits to hear a word from you.”", list(&people)));
        }
    }
    let ask = called(source, "{{ token | a }}", "a token");
    let marked = if sheets::unmarked(source).is_empty() {
        "Every piece of a puzzle wears"
    } else {
        "Nearly every piece of a puzzle wears"
    };
    lines.extend(SAY.iter().map(|line| line.replace("{token}", &ask).replace("{marked}", marked)));
    for lock in kit.locks.iter().filter(|lock| matches!(lock.kind, LockKind::Directions(_))) {
        lines.push(format!("“{}: {CLEAR}”", capital(&source.say(&lock.name))));
    }
    if kit.levels.of(source.party.level).open_steps > 0 {
        lines.push(
            OPEN.replace("{tokens}", &called(source, "{{ token | plural }}", "tokens"))
                .replace("{box}", &beside(source)),
        );
    }
    let hangs = |puzzle: &&Puzzle| {
        crate::mechanics::find(&puzzle.mechanic).is_ok_and(|mechanic| !mechanic.on_locks().is_empty())
    };
    if kit.puzzles.iter().any(|puzzle| hangs(&puzzle)) {
        lines.push(CLOSED.to_owned());
    }
    lines.push(match &kit.letter.place {
        Some(place) => {
            format!("Then point out the letter {}. {CLOCK}", place_name(source, place))
        }
        None => format!("Then read the letter aloud. {CLOCK}"),
    });
    lines
}

/// What guests hear a token called: the theme's word, or ours where it has none.
fn called(source: &Source<'_>, slot: &str, ours: &str) -> String {
    let word = source.say(slot);
    if word.contains("{{") { ours.to_owned() } else { word }
}

/// Whether something that guests look for lies at a spot: the letter, a part of a puzzle, a tool, a key, a box. One that
/// somebody opens for them at a word is given to them.
fn in_play(kit: &Kit, spot: &SpotId) -> bool {
    let here = |place: &Place| matches!(place, Place::Spot(id) if id == spot);
    kit.letter.place.as_ref().is_some_and(here)
        || kit.puzzles.iter().any(|puzzle| puzzle.parts.values().any(here))
        || kit.boxes.iter().any(|item| here(&item.place) && !kit.opens_at_a_word(item))
        || kit.props.iter().any(|prop| here(&prop.place) && matches!(prop.role, PropRole::Tool | PropRole::Key(_)))
}

/// The rounds in words.
pub(super) fn rounds(source: &Source<'_>) -> Vec<RoundText> {
    let kit = &source.opened.kit;
    source
        .flow
        .rounds
        .iter()
        .enumerate()
        .map(|(index, round)| {
            let puzzles: Vec<&Puzzle> = round.solves.iter().filter_map(|id| kit.puzzle(id)).collect();
            let mut lines: Vec<String> = puzzles.iter().map(|puzzle| step(source, puzzle)).collect();
            let opened: Vec<String> =
                round.opens.iter().filter_map(|id| kit.box_def(id)).map(|item| source.say(&item.name)).collect();
            if !opened.is_empty() {
                lines.push(format!("Then {} can be opened.", list(&opened)));
            }
            if round.opens.contains(&kit.finish.opens) {
                lines.extend(cue(source).map(|cue| format!("Then it is your turn. {cue}")));
            }
            let heading = match puzzles.len() {
                0 => "nothing to solve".to_owned(),
                1 => "one puzzle is open".to_owned(),
                n => format!("{n} puzzles are open at once"),
            };
            RoundText { title: format!("Round {}: {heading}", index + 1), lines }
        })
        .collect()
}

/// What the host does when the last box opens, if anything.
pub(super) fn cue(source: &Source<'_>) -> Option<String> {
    let cue = parse(&source.say(source.opened.kit.finish.cue.trim())).text();
    (!cue.trim().is_empty()).then(|| sentence(&cue))
}

fn step(source: &Source<'_>, puzzle: &Puzzle) -> String {
    let kit = &source.opened.kit;
    let title = source.party.script.puzzle(&puzzle.id).map_or(puzzle.title.as_str(), |text| text.title.as_str());
    let opens = kit.lock(&puzzle.opens).map_or_else(|| "opens no lock".to_owned(), |lock| spoken::gives(source, lock));
    let tools: Vec<String> =
        puzzle.tools.iter().filter_map(|id| kit.prop(id)).map(|prop| source.say(&prop.name)).collect();
    let with = if tools.is_empty() { String::new() } else { format!(", with {}", list(&tools)) };
    format!("{title} {opens}{with}.{}", time(source, puzzle))
}

/// How long a puzzle takes: by the author and in the simulated evenings, each called what it is.
fn time(source: &Source<'_>, puzzle: &Puzzle) -> String {
    let author = puzzle.minutes.map(|m| format!("{} (author)", minutes(m)));
    let rehearsed = source.rehearsal.and_then(|rehearsal| {
        let at_it = rehearsal.puzzles.iter().find(|of| of.puzzle == puzzle.id)?;
        Some(format!("{} (simulated)", minutes(at_it.minutes.median)))
    });
    let opens = Opens::Lock(puzzle.opens.clone());
    let by = source.rehearsal.and_then(|rehearsal| rehearsal.past.iter().find(|past| past.opens == opens));
    let by = by.map_or_else(String::new, |past| format!(", half by minute {:.0}", past.half));
    match (author, rehearsed) {
        (Some(author), Some(rehearsed)) => format!(" Time: {author}, {rehearsed}{by}."),
        (Some(one), None) | (None, Some(one)) => format!(" Time: {one}{by}."),
        (None, None) => String::new(),
    }
}

/// What the rounds are, and what their minutes count.
pub(super) fn rounds_note(source: &Source<'_>) -> String {
    if source.rehearsal.is_none() {
        return ROUNDS.to_owned();
    }
    format!("{ROUNDS} {MINUTES}")
}

/// How to hand tokens out at this level: what they are, what lies open, and the one rule for the rest.
pub(super) fn tokens_note(source: &Source<'_>) -> Vec<String> {
    let rules = source.opened.kit.levels.of(source.party.level);
    let level = capital(source.party.level.word());
    let about = source.say(&rules.about);
    let about = if about.trim().is_empty() { String::new() } else { format!("{level}: {} ", sentence(&about)) };
    let open = match rules.open_steps {
        0 => "No token lies open at the start.",
        1 => "The tokens with one dot lie open from the start, the words up. You keep the others.",
        2 => "The tokens with one and two dots lie open from the start, the words up. You keep the others.",
        _ => "All tokens lie open from the start, the words up.",
    };
    let late = if source.rehearsal.is_some() {
        " Where they work at no lock at all, the table by the clock tells which lock comes next."
    } else {
        ""
    };
    let words = source.opened.kit.locks.iter().any(|lock| lock.kind == LockKind::Spoken);
    let said = if words { " (a wrong word is a try too)" } else { "" };
    let rule = format!(
        "Offer a token when they ask, when nobody has written, tried or found anything new at a lock for {} minutes, or after three wrong tries at one \
         lock{said}: of that lock, with the fewest dots that they do not have yet. The table counts \
         such quiet minutes, lock by lock.{late}",
        rules.quiet_minutes.max(1)
    );
    let mut lines = vec![
        "Every token wears the mark of the lock it helps with, and one, two or three dots: where to look, what to \
         do, all but the last step. Pick by mark and dots; you need not read them."
            .to_owned()
            + &known_as(source),
        format!("{about}{open}"),
    ];
    lines.extend((rules.open_steps < 3).then_some(rule));
    lines
}

/// What guests call a token, where the theme has its own word.
fn known_as(source: &Source<'_>) -> String {
    let word = source.say("{{ token | a }}");
    if word.contains("{{") || word.contains("token") {
        String::new()
    } else {
        format!(" Guests know a token as {word}.")
    }
}

/// A row of the table for a quiet table.
#[derive(Clone, Debug, Serialize)]
pub(super) struct QuietRow {
    after: String,
    dots: usize,
    give: String,
    tells: Pointed,
}

/// What to give when at a table that has gone quiet: the steps that are not open from the start, one after another.
pub(super) fn quiet(source: &Source<'_>) -> Vec<QuietRow> {
    let rules = source.opened.kit.levels.of(source.party.level);
    let pause = f64::from(rules.quiet_minutes.max(1));
    let held = Step::ALL.into_iter().filter(|step| step.number() > usize::from(rules.open_steps));
    let mut rows: Vec<QuietRow> = held
        .zip(1_u8..)
        .map(|(step, turn)| QuietRow {
            after: minutes(pause * f64::from(turn)),
            dots: step.number(),
            give: capital(step.word()),
            tells: pointed(
                match step {
                    Step::Nudge => "where to look",
                    Step::Method => "what to do",
                    Step::Giveaway => "all but the last step",
                },
                "",
            ),
        })
        .collect();
    rows.push(QuietRow {
        after: minutes(pause * (rows.len() as f64 + 1.0)),
        dots: 0,
        give: "Yourself".into(),
        tells: pointed("sit down with them and do the last step together, by the answers", "answers"),
    });
    rows
}

/// The tokens, puzzle by puzzle.
pub(super) fn tokens(source: &Source<'_>) -> Vec<TokenText> {
    let kit = &source.opened.kit;
    kit.puzzles
        .iter()
        .filter_map(|puzzle| {
            let text = source.party.script.puzzle(&puzzle.id)?;
            let hints = source.party.puzzle(&puzzle.id).map(|laid| &laid.hints)?;
            let lock = kit.lock(&puzzle.opens);
            let steps: Vec<String> = Step::ALL.into_iter().map(|step| parse(hints.step(step)).text()).collect();
            steps.iter().any(|text| !text.trim().is_empty()).then(|| TokenText {
                mark: lock.map(|lock| lock.mark.clone()).unwrap_or_default(),
                title: capital(&text.title),
                steps,
            })
        })
        .collect()
}

/// A puzzle's title with its lock's mark in words.
pub(super) fn titled(title: &str, lock: Option<&crate::kit::Lock>) -> String {
    match lock {
        Some(lock) if !lock.mark.is_empty() => format!("{} · {}", capital(&lock.mark), title),
        _ => title.to_owned(),
    }
}
