use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use rayon::prelude::*;

use super::{Facts, Finding, evenings, finding, mending, run_unmended};
use crate::diag::{Anchor, Hinted, Level, Trouble};
use crate::face::proof::Printed;
use crate::face::{Audience, Piece, inked};
use crate::flow::Flow;
use crate::kit::Kit;
use crate::party::{Kept, Party};
use crate::print::{Fit, MissingGlyph, Press};
use crate::rehearse::{Rehearsal, Rehearsals};
use crate::sheet::Paper;
use crate::theme::{Edition, Loaded};

/// What type setting said of one piece.
#[derive(Clone, Debug, PartialEq)]
pub struct SetPiece {
    /// The piece's id.
    pub piece: String,
    /// Whom the piece is for.
    pub audience: Audience,
    /// The paper, for pieces that follow it: the letter.
    pub paper: Option<Paper>,
    /// How each run of text came out.
    pub fits: Vec<Fit>,
    /// Characters that the fonts lack.
    pub missing: Vec<MissingGlyph>,
    /// What a reader of the paper finds on each side of a puzzle's piece; empty for other pieces, and where the paper
    /// was not asked for ([`prove_printed`]).
    pub printed: Vec<Printed>,
    /// The share of its front that pictures cover with ink, 0 to 1; none where the paper was not asked for.
    pub ink: Option<f64>,
    /// Why the piece could not be set at all.
    pub trouble: Option<Trouble>,
}

/// All that is known of a kit in one edition.
#[derive(Debug)]
pub struct Proof {
    /// The edition.
    pub edition: Edition,
    /// Level by level, in the order asked for.
    pub levels: Vec<LevelProof>,
    /// What was found, over all levels.
    pub findings: Vec<Finding>,
}

/// What is known of a kit at one level.
#[derive(Debug)]
pub struct LevelProof {
    /// The kit in its theme at this level.
    pub party: Party,
    /// What guests can reach.
    pub flow: Flow,
    /// What type setting said; empty without a press.
    pub set: Vec<SetPiece>,
    /// Simulated evenings; none where the end cannot be reached.
    pub rehearsal: Option<Arc<Rehearsal>>,
}

impl Proof {
    /// What is known at a level, if it was proven.
    #[must_use]
    pub fn level(&self, level: Level) -> Option<&LevelProof> {
        self.levels.iter().find(|proof| proof.party.level == level)
    }

    /// Looks for the mends that take long to find, such as another code that goes with all the others, for findings
    /// that have none; gives up when `stop` says so. `kit` and `theme` are those that were proved.
    pub fn mend(&mut self, kit: &Kit, theme: &Loaded, stop: &dyn Fn() -> bool) {
        let Self { levels, findings, .. } = self;
        if let Some(LevelProof { party, flow, set, rehearsal }) = levels.first() {
            mending::mend(&Facts { kit, theme, party, flow, set, rehearsal: rehearsal.as_deref() }, findings, stop);
        }
    }

    /// Whether [`Proof::mend`] has anything to look for.
    #[must_use]
    pub fn wants_mends(&self) -> bool {
        self.findings.iter().any(mending::wanted)
    }
}

/// Proves a kit at some levels: lays it out, reads it, sets it when there is a press, and checks it.
///
/// Findings that every level has are told once, with no level.
///
/// # Errors
/// When the palette cannot be read; anything else that is wrong is a finding.
pub fn prove(kit: &Kit, theme: &Loaded, press: Option<&Press>, levels: &[Level]) -> Hinted<Proof> {
    let mut proof = Prover::default().prove(kit, theme, press, levels)?;
    proof.mend(kit, theme, &|| false);
    Ok(proof)
}

/// As [`prove`], and reads every puzzle once more from its laid-out pieces.
///
/// # Errors
/// As [`prove`].
pub fn prove_printed(kit: &Kit, theme: &Loaded, press: &Press, levels: &[Level]) -> Hinted<Proof> {
    let mut proof = Prover::default().prove_printed(kit, theme, press, levels)?;
    proof.mend(kit, theme, &|| false);
    Ok(proof)
}

/// As [`prove_printed`], for one edition: its pieces are what is set and read.
///
/// # Errors
/// As [`prove`].
pub fn prove_edition(kit: &Kit, theme: &Loaded, press: &Press, levels: &[Level], edition: Edition) -> Hinted<Proof> {
    let mut proof = Prover { edition, ..Prover::default() }.prove_printed(kit, theme, press, levels)?;
    // A mend changes the kit, not an edition of it: it is looked for once.
    if edition == Edition::Colour {
        proof.mend(kit, theme, &|| false);
    }
    Ok(proof)
}

/// Proves a kit again and again, and works out anew only what an edit changed: puzzles are taken over as they were
/// laid out and read, and faces as they were set, when all is the same that goes into them. The checks themselves
/// run every time. A proof is the same as one of [`prove`], but for the mends that take long to find: [`Proof::mend`]
/// looks for those.
///
/// A prover belongs to one theme and one press: begin with a new one when either changes.
#[derive(Debug, Default)]
pub struct Prover {
    edition: Edition,
    kept: Kept,
    /// What was set in the last proof, by piece and paper; levels may differ.
    set: Faces,
    /// The ink of each picture seen so far.
    inks: BTreeMap<Arc<str>, f64>,
    rehearsals: Rehearsals,
}

/// Faces with what type setting said of them.
type Faces = BTreeMap<(String, Option<Paper>), Vec<(Piece, SetPiece)>>;

impl Prover {
    /// Proves a kit at some levels, as [`prove`].
    ///
    /// # Errors
    /// As [`prove`].
    pub fn prove(&mut self, kit: &Kit, theme: &Loaded, press: Option<&Press>, levels: &[Level]) -> Hinted<Proof> {
        self.run(kit, theme, press, levels, false)
    }

    /// Proves a kit at some levels, as [`prove_printed`].
    ///
    /// # Errors
    /// As [`prove`].
    pub fn prove_printed(&mut self, kit: &Kit, theme: &Loaded, press: &Press, levels: &[Level]) -> Hinted<Proof> {
        self.run(kit, theme, Some(press), levels, true)
    }

    fn run(
        &mut self,
        kit: &Kit,
        theme: &Loaded,
        press: Option<&Press>,
        levels: &[Level],
        paper: bool,
    ) -> Hinted<Proof> {
        self.kept.begin();
        let last = std::mem::take(&mut self.set);
        let mut proofs: Vec<LevelProof> = Vec::new();
        let mut found = Vec::new();
        for level in levels {
            let mut party = Party::in_edition(kit, theme, *level, self.edition, &mut self.kept)?;
            if let (Edition::LargePrint, Some(press)) = (self.edition, press) {
                party.enlarge(&|face| press.fits(face))?;
            }
            let flow = party.flow(kit);
            let mut set =
                press.map(|press| set_new(press, &party, theme, (&last, &mut self.set), paper)).unwrap_or_default();
            if paper {
                self.ink(&party, &mut set);
            }
            // Where the end cannot be reached, other checks say why.
            let rehearsal = self.rehearsals.of(kit, &party.parts(kit), *level).ok();
            let known = rehearsal.as_deref();
            let facts = Facts { kit, theme, party: &party, flow: &flow, set: &set, rehearsal: known };
            found.push(run_unmended(&facts));
            proofs.push(LevelProof { party, flow, set, rehearsal });
        }
        evenings::together(kit, &proofs, &mut found);
        let mut findings = merged(found);
        for finding in &mut findings {
            finding.edition = Some(self.edition).filter(|edition| *edition != Edition::Colour);
        }
        Ok(Proof { edition: self.edition, levels: proofs, findings })
    }
}

impl Prover {
    /// Looks how much ink the pictures of each piece take. Pieces share frames, so each picture is looked at once.
    fn ink(&mut self, party: &Party, set: &mut [SetPiece]) {
        let arts = party.pieces.iter().flat_map(|piece| piece.front.arts()).map(|art| &art.svg);
        let new: BTreeSet<&Arc<str>> = arts.filter(|svg| !self.inks.contains_key(*svg)).collect();
        let seen: Vec<(Arc<str>, f64)> = new.into_par_iter().map(|svg| (svg.clone(), inked(svg))).collect();
        self.inks.extend(seen);
        for piece in &party.pieces {
            let share = piece.front.inked(|svg| self.inks.get(svg).copied().unwrap_or_default());
            for set in set.iter_mut().filter(|set| set.piece == piece.id && set.paper.is_none()) {
                set.ink = Some(share);
            }
        }
    }
}

/// Sets every face of a party, the letter once for each paper, and gathers what type setting says.
#[must_use]
pub fn set_pieces(press: &Press, party: &Party, theme: &Loaded) -> Vec<SetPiece> {
    set_new(press, party, theme, (&Faces::new(), &mut Faces::new()), false)
}

/// As [`set_pieces`]; a piece that the last proof or an earlier level has just so is not set again. With `paper`, the
/// pieces of puzzles are read from the paper as well.
fn set_new(
    press: &Press,
    party: &Party,
    theme: &Loaded,
    (last, now): (&Faces, &mut Faces),
    paper: bool,
) -> Vec<SetPiece> {
    let pages = |paper: Paper| party.letters(theme, paper.page_size(party.large()), &|face| press.fits(face));
    let letters: Vec<(Paper, Hinted<Vec<Piece>>)> = Paper::ALL.iter().map(|paper| (*paper, pages(*paper))).collect();
    let mut jobs: Vec<(Option<Paper>, &Piece)> = party.pieces.iter().map(|piece| (None, piece)).collect();
    let mut failed = Vec::new();
    for (paper, letter) in &letters {
        match letter {
            Ok(pages) => jobs.extend(pages.iter().map(|page| (Some(*paper), page))),
            Err(trouble) => failed.push(SetPiece {
                piece: "letter".into(),
                audience: Audience::Players,
                paper: Some(*paper),
                fits: Vec::new(),
                missing: Vec::new(),
                printed: Vec::new(),
                ink: None,
                trouble: Some(trouble.clone()),
            }),
        }
    }
    // A face set for its words alone was not read from the paper.
    let known = |on: Option<Paper>, piece: &Piece, read: bool| {
        let key = (piece.id.clone(), on);
        let fits = |(old, set): &&(Piece, SetPiece)| old == piece && (!read || !set.printed.is_empty());
        let find = |faces: &Faces| faces.get(&key)?.iter().find(fits).map(|(_, set)| set.clone());
        find(now).or_else(|| find(last))
    };
    let set: Vec<SetPiece> = jobs
        .par_iter()
        .map(|(on, piece)| {
            let read = paper && party.puzzles.iter().any(|puzzle| piece.group == puzzle.id.as_str());
            known(*on, piece, read).unwrap_or_else(|| set_one(press, *on, piece, read))
        })
        .collect();
    for ((paper, piece), set) in jobs.into_iter().zip(&set) {
        let faces = now.entry((piece.id.clone(), paper)).or_default();
        if !faces.iter().any(|(old, _)| old == piece) {
            faces.push((piece.clone(), set.clone()));
        }
    }
    set.into_iter().chain(failed).collect()
}

/// Sets a piece; with its art, and read from the paper, only where it is asked for.
fn set_one(press: &Press, paper: Option<Paper>, piece: &Piece, read: bool) -> SetPiece {
    let mut set = SetPiece {
        piece: piece.id.clone(),
        audience: piece.audience,
        paper,
        fits: Vec::new(),
        missing: Vec::new(),
        printed: Vec::new(),
        ink: None,
        trouble: None,
    };
    for (face, back) in std::iter::once((&piece.front, false)).chain(piece.back.iter().map(|back| (back, true))) {
        match if read { press.face(face) } else { press.words(face) } {
            Ok(face) => {
                if read {
                    set.printed.push(face.printed(piece, back).seen());
                }
                set.fits.extend(face.fits);
                set.missing.extend(face.missing);
            }
            Err(trouble) => set.trouble = Some(trouble),
        }
    }
    set
}

/// Findings of several levels as one list.
fn merged(found: Vec<Vec<Finding>>) -> Vec<Finding> {
    let count = found.len();
    let mut groups: Vec<(Finding, usize, Vec<Option<Level>>)> = Vec::new();
    let mut places: BTreeMap<(Anchor, &'static str), Vec<usize>> = BTreeMap::new();
    for finding in found.into_iter().flatten() {
        let level = finding.level;
        let bare = Finding { level: None, ..finding };
        let here = places.entry((bare.anchor.clone(), bare.name)).or_default();
        match here.iter().copied().find(|at| groups.get(*at).is_some_and(|(known, _, _)| *known == bare)) {
            Some(at) => {
                if let Some((_, times, levels)) = groups.get_mut(at) {
                    *times += 1;
                    levels.push(level);
                }
            }
            None => {
                here.push(groups.len());
                groups.push((bare, 1, vec![level]));
            }
        }
    }
    let tell = |(bare, times, levels): (Finding, usize, Vec<Option<Level>>)| -> Vec<Finding> {
        if times == count {
            return vec![bare];
        }
        levels.into_iter().map(|level| Finding { level, ..bare.clone() }).collect()
    };
    finding::sorted(groups.into_iter().flat_map(tell).collect())
}
