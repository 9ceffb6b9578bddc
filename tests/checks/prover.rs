//! A prover that goes on from edit to edit says what a fresh proof says.

use inklatch::checks::{Proof, Prover, prove};
use inklatch::diag::Level;
use inklatch::kit::Kit;
use inklatch::theme::Lettering;

/// A change to a kit.
type Change = fn(&mut Kit);

/// All that a proof shows of itself.
fn shown(proof: &Proof) -> String {
    let mut all = format!("{:?}\n", proof.findings);
    for level in &proof.levels {
        all.push_str(&format!("{:?}\n{:?}\n{:?}\n", level.party.puzzles, level.party.pieces, level.set));
        all.push_str(&format!("{:?}\n{:?}\n", level.party.troubles, level.flow));
    }
    all
}

#[test]
fn a_prover_says_the_same_as_a_fresh_proof() {
    let opened = inklatch::bundle::open(None).unwrap();
    let lettering = Lettering::new(&opened.theme.theme.lettering, &opened.kit.look.lettering).unwrap();
    let press = inklatch::print::Press::new(&opened.fonts, &lettering).unwrap();
    let mut kit = opened.kit.clone();
    let mut prover = Prover::default();
    let edits: [Change; 8] = [
        |_| {},
        |kit| kit.puzzles[0].title.push('!'),
        |kit| kit.puzzles[0].hints.nudge.push_str(" Look again."),
        |kit| kit.puzzles[1].answer = kit.puzzles[1].answer.chars().rev().collect(),
        |kit| kit.locks[0].mark = kit.locks[1].mark.clone(),
        |kit| kit.letter.body.push_str(" Hurry."),
        |kit| kit.seed += 1,
        |kit| drop(kit.look.palette.insert("accent".into(), "#204080".into())),
    ];
    for (at, edit) in edits.into_iter().enumerate() {
        edit(&mut kit);
        let mut kept = prover.prove(&kit, &opened.theme, Some(&press), &Level::ALL).unwrap();
        kept.mend(&kit, &opened.theme, &|| false);
        let fresh = prove(&kit, &opened.theme, Some(&press), &Level::ALL).unwrap();
        assert!(shown(&kept) == shown(&fresh), "edit {at} is proved in another way");
    }
}
