use std::collections::{BTreeMap, BTreeSet, HashMap};

use super::{Draft, Facts, Sink, things};
use crate::codes::cased_words;
use crate::diag::{Anchor, Severity};
use crate::face::{Audience, Piece};
use crate::kit::LockKind;
use crate::party::words_of;

check!(
    /// ## What it does
    /// Flags a piece for guests, or a hint token, that carries what only the host may know: a sentence of the
    /// host's (preparation, way to the answer, reset, remarks), or an answer in its label, its name or its
    /// description for those who cannot see it.
    ///
    /// ## Why it matters at the table
    /// Guests see labels while cutting, hear descriptions read aloud and see the names of files.
    ///
    /// ## How to mend
    /// Take the words out of the piece, or change the name that holds the answer.
    HostTextOnPlayerPage, "host-text-on-player-page", Blocks, "host words or an answer on a piece for guests",
    "guests see labels while cutting, hear descriptions read aloud and see the names of files", run
);

/// Shorter host texts are words that may stand anywhere.
const LEAST_CHARS: usize = 24;

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let host = host_texts(facts);
    let codes = things::codes(facts);
    let secret: Vec<&things::Code<'_>> =
        codes.iter().filter(|code| !matches!(code.lock.kind, LockKind::Key | LockKind::Spoken)).collect();
    let openings = openings(&host);
    let mut codes_of: BTreeMap<&str, Vec<usize>> = BTreeMap::new();
    secret.iter().enumerate().for_each(|(at, code)| codes_of.entry(&code.answer).or_default().push(at));
    for piece in facts.party.pieces.iter().filter(|piece| piece.audience != Audience::Host) {
        let words = words_of(piece);
        let shown = || words.printed.iter().chain(words.beside.iter().map(|(_, text)| text));
        let carried: BTreeSet<usize> = shown().flat_map(|shown| carried(shown, &host, &openings)).collect();
        for (what, _) in carried.into_iter().filter_map(|at| host.get(at)) {
            let message = format!("\"{}\" carries the host's {what}", piece.label);
            sink.add(Draft::new(place(piece), message).help("take the sentence out of the piece"));
        }
        // Codes in what is printed are for `code-in-plain-sight` and `hint-says-it`.
        for (name, text) in &words.beside {
            let held: BTreeSet<usize> =
                cased_words(text).filter_map(|word| codes_of.get(word)).flatten().copied().collect();
            for code in held.into_iter().filter_map(|at| secret.get(at)) {
                let message = format!("the {name} of \"{}\" holds the code of {}", piece.label, code.lock.name);
                let draft = Draft::new(place(piece), message).severity(Severity::Blocks);
                sink.add(draft.help("change the name that holds it, or the code"));
            }
        }
    }
}

/// The host's sentences by their first bytes.
fn openings<'h>(host: &'h [(&'static str, String)]) -> HashMap<&'h [u8], Vec<usize>> {
    let mut openings: HashMap<&[u8], Vec<usize>> = HashMap::new();
    for (at, (_, text)) in host.iter().enumerate() {
        openings.entry(text.as_bytes().get(..LEAST_CHARS).unwrap_or_default()).or_default().push(at);
    }
    openings
}

/// The host's sentences that stand in a text.
fn carried(text: &str, host: &[(&'static str, String)], openings: &HashMap<&[u8], Vec<usize>>) -> Vec<usize> {
    let bytes = text.as_bytes();
    let mut found = Vec::new();
    for (at, opening) in bytes.windows(LEAST_CHARS).enumerate() {
        // Sentences begin at the beginning of a word.
        if at > 0 && bytes.get(at - 1).is_some_and(u8::is_ascii_lowercase) {
            continue;
        }
        for sentence in openings.get(opening).into_iter().flatten() {
            let rest = bytes.get(at..).unwrap_or_default();
            if host.get(*sentence).is_some_and(|(_, sentence)| rest.starts_with(sentence.as_bytes())) {
                found.push(*sentence);
            }
        }
    }
    found
}

/// Where the first words of the piece are written.
fn place(piece: &Piece) -> Anchor {
    piece.front.runs().next().map_or_else(|| Anchor::Piece(piece.id.clone()), |run| run.from.clone())
}

/// The host's sentences.
fn host_texts(facts: &Facts<'_>) -> Vec<(&'static str, String)> {
    let kit = facts.kit;
    let mut texts: Vec<(&'static str, String)> = Vec::new();
    for laid in &facts.party.puzzles {
        texts.push(("way to the answer", laid.reason.clone()));
        texts.push(("reset", laid.reset.clone()));
        texts.extend(laid.prep.iter().map(|step| ("preparation", step.what.clone())));
    }
    let remarks = kit
        .boxes
        .iter()
        .map(|item| &item.about)
        .chain(kit.spots.iter().map(|spot| &spot.about))
        .chain(kit.props.iter().map(|prop| &prop.about))
        .chain(kit.locks.iter().map(|lock| &lock.how_to_set));
    texts.extend(remarks.map(|text| ("remark", facts.party.say(text))));
    texts.push(("brief", facts.party.script.brief.clone()));
    texts.retain(|(_, text)| text.chars().count() >= LEAST_CHARS);
    texts
}
