//! The slips for those who wait for a word.

use super::Party;
use crate::diag::{Anchor, Hinted};
use crate::face::{Align, Audience, Face, Piece, Role, TextRun, Valign};
use crate::ids::PuzzleId;
use crate::kit::{BoxDef, Kit, Lock, LockKind};
use crate::script::{Rich, capital, parse};
use crate::theme::Loaded;
use crate::units::Pt;

/// When a word that is said opens a box: one rule, on the slips and in the guide (common practice, no source).
pub const WORD_RULE: &str = "It counts however it is said: softly, in the midst of a sentence, or earlier than you \
    thought. Another word does not, however close: say only that this is not it, and let them try again.";

/// A slip for whoever waits for a word: which word it is, and what they open then. They are the host's pieces.
pub(super) fn slips(party: &Party, kit: &Kit, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    let spoken = kit.locks.iter().filter(|lock| lock.kind == LockKind::Spoken);
    let waiting = spoken.filter_map(|lock| Some((lock, kit.box_of(&lock.id)?, word(party, kit, lock)?)));
    waiting
        .map(|(lock, item, word)| (Anchor::Lock(lock.id.clone()), slip(party, kit, theme, (lock, item, &word))))
        .collect()
}

/// The word as guests say it; none before there is one.
fn word(party: &Party, kit: &Kit, lock: &Lock) -> Option<String> {
    let word = party.puzzle(&kit.puzzle_of(&lock.id)?.id)?.answer.trim();
    (!word.is_empty()).then(|| word.to_uppercase())
}

fn slip(party: &Party, kit: &Kit, theme: &Loaded, (lock, item, word): (&Lock, &BoxDef, &str)) -> Hinted<Piece> {
    const FRAME: &str = "landscape";
    let id = PuzzleId::from_text(lock.id.as_str());
    let cx = party.plain_dressing(theme, &id);
    let name = party.say(&item.name);
    let person = kit.waits_for(&lock.id).map(|spot| party.say(&spot.name));
    let title = person.map_or_else(|| "Listen for a word".to_owned(), |person| format!("For {person}"));
    let frame = cx.frame(FRAME)?;
    let mut face = Face::on(&frame, format!("A slip about {name}: the word that opens it"));
    let (ink, from) = (cx.colour("ink"), Anchor::Lock(lock.id.clone()));
    let run =
        TextRun::new(cx.slot(&frame, FRAME, "title")?, Role::Display, Rich::plain(title), Pt::new(20.0), ink, from);
    face.text(run.aligned(Align::Centre, Valign::Middle));
    let others = if item.locks.len() > 1 { " If other locks still shut it, wait for these." } else { "" };
    let body = parse(&format!(
        "Listen for the word **{word}**.\n\nUntil somebody says it, keep {name} shut. When you hear it, open {name} or hand it \
         over.{others} {WORD_RULE}"
    ));
    let from = Anchor::Lock(lock.id.clone());
    face.text(TextRun::new(cx.slot(&frame, FRAME, "body")?, Role::Text, body, Pt::new(14.0), ink, from));
    if let (Some(slot), true) = (frame.slot("mark"), theme.symbol(&lock.mark).is_some()) {
        face.art(cx.symbol(&lock.mark)?, slot, format!("mark: {}", lock.mark));
    }
    Ok(Piece {
        id: format!("slip-{}", lock.id),
        part: String::new(),
        label: format!("Slip for whoever keeps it: {}", capital(&name)),
        audience: Audience::Host,
        front: face,
        back: None,
        copies: 1,
        measured: false,
        stock: crate::face::Stock::Plain,
        on_a_thing: false,
        large: false,
        group: "slips".into(),
    })
}
