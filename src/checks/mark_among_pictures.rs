use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::{Draft, Facts, Finding, Fix, Sink, trying};
use crate::diag::{Anchor, PuzzleField};
use crate::face::{Audience, Layer, clean_svg};
use crate::kit::Lock;

check!(
    /// ## What it does
    /// Flags a puzzle among whose own pictures the mark of another puzzle's lock stands. Marks that are meant as marks,
    /// such as those on a card of the hasp, are left alone.
    ///
    /// ## Why it matters at the table
    /// Guests are told that what wears a lock's mark belongs to it: they carry the piece to the wrong lock.
    ///
    /// ## How to mend
    /// Give that lock another mark, or name other pictures in the puzzle's setup.
    MarkAmongPictures, "mark-among-pictures", Warns, "a lock's mark among the pictures of another puzzle",
    "guests carry the piece to the wrong lock", run, mend
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let drawn = marks(facts);
    for puzzle in &facts.kit.puzzles {
        let mut found: BTreeSet<&str> = BTreeSet::new();
        let own = |piece: &&crate::face::Piece| piece.group == puzzle.id.as_str() && piece.audience == Audience::Players;
        for piece in facts.party.pieces.iter().filter(own) {
            for layer in &piece.front.layers {
                let Layer::Art(art) = layer else { continue };
                if !art.alt.starts_with("mark: ") {
                    found.extend(drawn.get(&art.svg).map(|lock| lock.id.as_str()));
                }
            }
        }
        for lock in drawn.values().filter(|lock| found.contains(lock.id.as_str()) && lock.id != puzzle.opens) {
            let mark = lock.mark.replace('-', " ");
            let message = format!("among the pictures of \"{}\" is the {mark}, the mark of {}", puzzle.title, lock.name);
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup);
            sink.add(Draft::new(at, message).help("give the lock another mark, or name other pictures in the setup"));
        }
    }
}

/// The locks by their marks as they are drawn; of two with one mark the first, since `lock-unmarked` tells of those.
fn marks<'a>(facts: &Facts<'a>) -> BTreeMap<Arc<str>, &'a Lock> {
    let (party, theme) = (facts.party, facts.theme);
    let mut drawn = BTreeMap::new();
    for lock in &facts.kit.locks {
        let Some(svg) = theme.symbol(&lock.mark) else { continue };
        // A picture that cannot be read is told by what it is drawn on.
        if let Ok(svg) = party.pictures.symbol(&lock.mark, || clean_svg(svg, &party.palette)) {
            drawn.entry(svg).or_insert(lock);
        }
    }
    drawn
}

/// Another symbol for the lock.
fn mend(facts: &Facts<'_>, finding: &Finding) -> Option<Fix> {
    let named = |lock: &&Lock| {
        !lock.mark.is_empty() && finding.message.ends_with(&facts.party.say(&format!("the mark of {}", lock.name)))
    };
    trying::sound(facts, finding, trying::other_marks(facts, facts.kit.locks.iter().filter(named).collect()))
}
