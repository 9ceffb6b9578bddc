//! What a puzzle reads as, and whether it can be laid out and printed.

use inklatch::checks::SetPiece;
use inklatch::party::Party;
use inklatch::readings::Verdict;

use super::{Row, computed, mending, read_as, row, set, setup};
use crate::common::PRESS;

/// The first puzzle's pieces as they are printed; tampered with, the digits 5 and 8 stand in each other's place.
fn on_paper(party: &Party, tampered: bool) -> Vec<SetPiece> {
    let own = party.pieces.iter().filter(|piece| piece.group == party.puzzles[0].id.as_str());
    let print = |piece: &inklatch::face::Piece| {
        let mut side = PRESS.face(&piece.front).unwrap().printed(piece, false).seen();
        for text in side.texts.iter_mut().filter(|_| tampered) {
            match text.text.as_str() {
                "5" => text.text = "8".into(),
                "8" => text.text = "5".into(),
                _ => {}
            }
        }
        SetPiece { piece: piece.id.clone(), printed: vec![side], fits: Vec::new(), ..set(12.0, false, piece.audience) }
    };
    own.map(print).collect()
}

pub fn readings() -> Vec<Row> {
    vec![
        computed(
            "several-readings",
            "can be read as 258, 582",
            |party, _| read_as(party, &["258", "582"], Verdict::Several),
            |party, _| read_as(party, &["582"], Verdict::One),
        ),
        computed(
            "other-reading",
            "reads as 258, not as 582",
            |party, _| read_as(party, &["258"], Verdict::Other),
            |party, _| read_as(party, &["258", "582"], Verdict::Several),
        ),
        computed(
            "no-reading",
            "nothing that its lock (3 digit wheels) can show",
            |party, _| read_as(party, &[], Verdict::None),
            |party, _| read_as(party, &["258"], Verdict::Other),
        ),
        computed(
            "unproven-reading",
            "too large",
            |party, _| read_as(party, &["582"], Verdict::Unproven),
            |party, _| read_as(party, &["582"], Verdict::One),
        ),
        computed(
            "print-differs",
            "what is printed of \"The cuff\" reads as 852, not as 582",
            |party, set| *set = on_paper(party, true),
            |party, set| *set = on_paper(party, false),
        ),
        computed(
            "reading-remark",
            "two letters share a digit",
            |party, _| party.puzzles[0].readings.remarks.push("two letters share a digit".into()),
            |_, _| {},
        ),
        mending(row(
            "setup-refused",
            "there is no `wrod` here",
            |case| setup(case, 0, "(wrod: \"OWL\")"),
            // A mechanic that does not exist is another finding.
            |case| case.kit.puzzles[0].mechanic = "letter-kez".into(),
        )),
        row(
            "piece-unmade",
            "the theme draws no `token`",
            |case| drop(case.theme.theme.frames.remove("token")),
            |case| drop(case.theme.theme.frames.remove("tag")),
        ),
    ]
}
