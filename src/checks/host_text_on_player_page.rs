use super::{Draft, Facts, Sink, things};
use crate::codes::stands_in;
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
    for piece in facts.party.pieces.iter().filter(|piece| piece.audience != Audience::Host) {
        let words = words_of(piece);
        let shown = || words.printed.iter().chain(words.beside.iter().map(|(_, text)| text));
        for (what, text) in &host {
            if shown().any(|shown| shown.contains(text.as_str())) {
                let message = format!("\"{}\" carries the host's {what}", piece.label);
                sink.add(Draft::new(place(piece), message).help("take the sentence out of the piece"));
            }
        }
        // Codes in what is printed are for `code-in-plain-sight` and `hint-says-it`.
        for (name, text) in &words.beside {
            for code in secret.iter().filter(|code| stands_in(text, &code.answer)) {
                let message = format!("the {name} of \"{}\" holds the code of {}", piece.label, code.lock.name);
                let draft = Draft::new(place(piece), message).severity(Severity::Blocks);
                sink.add(draft.help("change the name that holds it, or the code"));
            }
        }
    }
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
