//! Putting everything back for the next group: what to print and buy, then the locks, the puzzles and the places in order.

use std::collections::BTreeMap;

use serde::Serialize;

use super::Source;
use super::evening::cue;
use super::places::PlaceText;
use super::words::{list, minutes, sentence, unit};
use crate::bundle::guide::words::amount;
use crate::face::{Audience, Stock};
use crate::kit::{Form, PropRole, TokenMake};
use crate::prep;
use crate::script::capital;

/// A part of the way back, with its lines to tick.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Part {
    title: String,
    lines: Vec<String>,
}

/// How long it takes, in which order.
pub(super) fn note(source: &Source<'_>) -> String {
    let again = (source.prep.again / 5.0).ceil() * 5.0;
    format!("One person needs about {} (an estimate) between two groups, in this order.", minutes(again))
}

/// The parts in order; `places` as for setting up.
pub(super) fn parts(source: &Source<'_>, places: &[PlaceText]) -> Vec<Part> {
    let nests = source.opened.kit.nests();
    let last = if nests { "Last place by place, innermost box first" } else { "Last place by place, the boxes first" };
    let found = [
        ("Before the first group comes, once for each further group", beforehand(source)),
        ("First the locks and what the guests held", first(source)),
        ("Then puzzle by puzzle", puzzles(source)),
        (last, places.iter().map(PlaceText::again).collect()),
    ];
    let kept = found.into_iter().filter(|(_, lines)| !lines.is_empty());
    kept.map(|(title, lines)| Part { title: title.to_owned(), lines }).collect()
}

/// What to print and to have once more.
fn beforehand(source: &Source<'_>) -> Vec<String> {
    let mut lines = Vec::new();
    let used = used_up(source);
    for file in source.files.iter().filter(|file| file.audience == "players") {
        let mut sheets = Vec::new();
        let mut papers: BTreeMap<Stock, usize> = BTreeMap::new();
        for (number, sheet) in (1..).zip(&file.sheets) {
            let on = |id: &str| {
                sheet.pieces.iter().any(|piece| {
                    piece.id.strip_prefix(id).is_some_and(|rest| rest.is_empty() || rest.starts_with("-part"))
                })
            };
            let mut names: Vec<String> = used.iter().filter(|(id, _)| on(id)).map(|(_, name)| name.clone()).collect();
            names.dedup();
            if !names.is_empty() {
                sheets.push(format!("sheet {number} ({})", list(&names)));
                if let Some(stock) = sheet.stock {
                    *papers.entry(stock).or_default() += 1;
                }
            }
        }
        if !sheets.is_empty() {
            let papers = papers.iter().map(|(stock, count)| {
                let name = stock.words().split(',').next().unwrap_or_default();
                format!("{count} of {name}")
            });
            let papers = list(&papers.collect::<Vec<_>>());
            lines.push(format!("Print once more, of the guests’ sheets: {} ({papers}).", list(&sheets)));
        }
    }
    let bought = source.prep.shopping.iter().filter(|line| line.used_up && (line.unit != "sheet" || line.guests));
    lines.extend(bought.map(|line| {
        let tokens = line.material == prep::STICKER && line.for_what.iter().any(|of| of == prep::TOKENS);
        let few = if tokens { " at most: for tokens only as many as were opened" } else { "" };
        let name = capital(&source.say(&line.name));
        format!("{name}: {} {}{few}.", amount(line.amount), unit(line.unit, line.amount))
    }));
    lines.extend(anew(source, &used));
    lines
}

/// The pieces that one group uses up, with their names: what is written on, torn open or taken home.
fn used_up(source: &Source<'_>) -> Vec<(String, String)> {
    let kit = &source.opened.kit;
    let pieces = source.party.pieces.iter().filter(|piece| piece.audience == Audience::Players);
    let gone = |piece: &&crate::face::Piece| {
        let pencilled = source
            .party
            .puzzles
            .iter()
            .any(|laid| laid.id.as_str() == piece.group && laid.prep.iter().any(|step| step.key == "pencils"));
        let prop = kit.props.iter().find(|prop| piece.group == format!("prop-{}", prop.id));
        let taken = prop.and_then(|prop| Some((prop, prop.printed.as_ref()?))).is_some_and(|(prop, spec)| {
            if prop.used_up {
                return true;
            }
            let blank = spec.texts().any(|text| text.trim().is_empty());
            // One for each guest is worn and taken home.
            let for_each = spec.copies > 1 && spec.copies >= u16::from(kit.players.1);
            match spec.form {
                Form::Envelope | Form::Band => true,
                Form::Tent | Form::Tag | Form::Label => blank || for_each,
                Form::Disc => for_each,
                Form::Banner | Form::Strip | Form::Cover => false,
            }
        });
        pencilled || taken || piece.id == kit.finish.card.as_str()
    };
    pieces.filter(gone).map(|piece| (piece.id.clone(), name(piece, source))).collect()
}

/// What is made anew out of what was printed once more: folded, glued, written on, with the minutes that it takes. A puzzle
/// is told where something of it dries; what is only cut out is cut out with the rest.
fn anew(source: &Source<'_>, used: &[(String, String)]) -> Vec<String> {
    let kit = &source.opened.kit;
    let gone = |group: &str| {
        let piece = |id: &str| source.party.piece(id).is_some_and(|piece| piece.group == group);
        used.iter().any(|(id, _)| piece(id))
    };
    let made = |name: &str, hands: f64, wait: f64| {
        let dry = if wait > 0.0 { format!(", then {} to dry", minutes(wait)) } else { String::new() };
        let work = minutes(hands.ceil());
        format!("{}: cut out and prepare as under “Getting ready” ({work} of work{dry}).", capital(name))
    };
    let props = kit.props.iter().filter(|prop| gone(&format!("prop-{}", prop.id))).filter_map(|prop| {
        let step = prep::printed::step(prop)?;
        let hands = step.hands + prep::CUT_MINUTES * prep::printed::pieces(prop) as f64;
        Some(made(&source.say(kit.prop_name(prop)), hands, step.wait))
    });
    let puzzles = source.party.puzzles.iter().filter(|laid| gone(laid.id.as_str())).filter_map(|laid| {
        let making = laid.prep.iter().filter(|step| step.key != "pencils" && !step.what.is_empty());
        let (hands, wait) =
            making.fold((0.0, 0.0_f64), |(hands, wait), step| (hands + step.hands, wait.max(step.wait)));
        let title = source.party.script.puzzle(&laid.id).map(|text| text.title.clone()).unwrap_or_default();
        (wait > 0.0).then(|| made(&title, hands, wait))
    });
    props.chain(puzzles).collect()
}

/// A piece by the name of what it belongs to: flags and badges of one prop are told once.
fn name(piece: &crate::face::Piece, source: &Source<'_>) -> String {
    let prop = source.opened.kit.props.iter().find(|prop| piece.group == format!("prop-{}", prop.id));
    prop.map_or_else(|| piece.label.clone(), |prop| source.say(source.opened.kit.prop_name(prop)))
}

fn first(source: &Source<'_>) -> Vec<String> {
    let kit = &source.opened.kit;
    let mut lines = Vec::new();
    if kit.locks.iter().any(|lock| lock.kind.wheels().is_some()) {
        lines.push(
            "Open every lock and leave it open. Dial its code afresh by the table of the locks, and set it again if it has \
             been changed."
                .to_owned(),
        );
    }
    let tools: Vec<String> = kit
        .props
        .iter()
        .filter(|prop| matches!(prop.role, PropRole::Tool | PropRole::Key(_)) && !prop.used_up)
        .map(|prop| source.say(&prop.name))
        .collect();
    if tools.is_empty() {
        lines.push("Gather every piece of every puzzle.".to_owned());
    } else {
        lines.push(format!("Gather every piece of every puzzle, and {}. Count them.", list(&tools)));
    }
    lines.extend(
        cue(source)
            .map(|cue| format!("If you moved anything when the last box opened, put it back where it was: “{cue}”")),
    );
    if kit.making.tokens == TokenMake::Flap {
        lines.push("Close the flap of every token that was opened with a fresh sticker.".to_owned());
    }
    lines
}

fn puzzles(source: &Source<'_>) -> Vec<String> {
    let kit = &source.opened.kit;
    let mut lines: Vec<String> = Vec::new();
    for laid in &source.party.puzzles {
        let line = sentence(&laid.reset);
        if !line.is_empty() && !lines.contains(&line) {
            lines.push(line);
        }
    }
    for (prop, spec) in kit.props.iter().filter_map(|prop| Some((prop, prop.printed.as_ref()?))) {
        let name = capital(&source.say(kit.prop_name(prop)));
        match spec.form {
            // A box is filled and closed at its place.
            Form::Envelope if kit.as_box(prop).is_some() => {}
            Form::Envelope => {
                lines.push(format!("{name}: fill the fresh one and close it, with a sticker if you like."))
            }
            Form::Band if !prop.used_up => {
                lines.push(format!("{name}: slide it on again, or put the fresh one round."));
            }
            Form::Tent | Form::Tag | Form::Label if spec.texts().any(|text| text.trim().is_empty()) => {
                lines.push(format!("{name}: lay out fresh ones for those that were written on or taken home."));
            }
            _ if prop.used_up && prep::printed::pieces(prop) > 1 => lines.push(format!("{name}: take the fresh ones.")),
            _ if prop.used_up => lines.push(format!("{name}: take the fresh one.")),
            _ => {}
        }
    }
    lines.push("Write on a fresh closing card where the treat is this time.".to_owned());
    lines
}
