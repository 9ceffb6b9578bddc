//! A party: one kit in its theme at one play level, with everything computed short of type setting.

mod depends;
mod drafts;
mod kept;
mod labels;
mod laid;
mod large;
mod letter;
mod lock_table;
mod lock_tags;
mod lying;
mod notes;
mod old_hints;
mod on_view;
mod printed;
mod reread;
mod scale;
mod seed;
mod slips;
mod token_make;
mod tokens;
mod trial;
mod untold;

use std::sync::Arc;

use depends::Key;
use rayon::prelude::*;

use crate::diag::{Anchor, Hinted, Level, Trouble};
use crate::face::{Pictures, Piece};
use crate::flow::{self, Flow};
use crate::ids::PuzzleId;
use crate::kit::material::PrepStep;
use crate::kit::{Apart, HintLadder, Kit, Lying, Positions};
use crate::mechanics::stock::stock;
use crate::mechanics::work::Work;
use crate::mechanics::{AnyView, Dressing, NO_NAMES};
use crate::prep::PuzzleSteps;
use crate::readings::{Readings, Verdict};
use crate::script::{Script, typographic};
use crate::theme::{Edition, Loaded, Palette};
use crate::units::Size;

pub use drafts::follow_drafts;
pub use kept::Kept;
pub use large::{Fits, LARGE, enlarged, is_copy};
pub use lock_table::{LockLeft, lock_table};
pub use lying::{folded, goes_into};
pub use on_view::{OnView, PieceWords, words_of};
pub use seed::{rng_at, rng_of};
pub use slips::WORD_RULE;
pub use trial::Trial;

/// One kit in its theme at one play level.
#[derive(Debug)]
pub struct Party {
    /// The play level.
    pub level: Level,
    /// The palette in force.
    pub palette: Palette,
    /// All texts.
    pub script: Script,
    /// The puzzles, in the kit's order.
    pub puzzles: Vec<LaidPuzzle>,
    /// Every printed piece except the letter, whose size follows the paper ([`Party::letter`]).
    pub pieces: Vec<Piece>,
    /// What kept a piece from being made, and for which puzzle or note.
    pub troubles: Vec<(Anchor, Trouble)>,
    /// Where the items of the kit stand in their lists.
    pub positions: Positions,
    /// What was read of the theme's pictures.
    pub pictures: Arc<Pictures>,
}

/// A puzzle, laid out and read.
#[derive(Clone, Debug)]
pub struct LaidPuzzle {
    /// Which one.
    pub id: PuzzleId,
    /// The author's answer with its slots filled.
    pub answer: String,
    /// The puzzle laid out, or why it cannot be.
    pub laid: Result<Arc<dyn AnyView>, Trouble>,
    /// What the independent solver found.
    pub readings: Readings,
    /// How that compares with the author's answer; none when it could not be laid out.
    pub verdict: Option<Verdict>,
    /// The parts that the puzzle has.
    pub parts: Vec<&'static str>,
    /// What the host does beforehand.
    pub prep: Vec<PrepStep>,
    /// Which kinds of a material that takes.
    pub kinds: Vec<(&'static str, String)>,
    /// How guests get to the answer.
    pub reason: String,
    /// The work that it is for guests, where the mechanic counts it.
    pub work: Option<Work>,
    /// How to put it back.
    pub reset: String,
    /// The hints in force: the author's, and where a step is empty none.
    pub hints: HintLadder,
    /// What the mechanic drafts for this puzzle, for the author to take over.
    pub drafted: HintLadder,
}

impl Party {
    /// Lays out and reads every puzzle of `kit` at `level`, and makes every piece.
    ///
    /// What goes wrong with one puzzle or note is kept in [`LaidPuzzle::laid`] and [`Party::troubles`] and does
    /// not keep the rest from being made.
    ///
    /// # Errors
    /// When the palette of the theme or of the kit cannot be read.
    pub fn new(kit: &Kit, theme: &Loaded, level: Level) -> Hinted<Self> {
        Self::with(kit, theme, level, &mut Kept::default())
    }

    /// As [`Party::new`], with puzzles that were laid out before, in this theme, taken from `kept` and new ones put
    /// into it. The party is the same as without.
    ///
    /// # Errors
    /// As [`Party::new`].
    pub fn with(kit: &Kit, theme: &Loaded, level: Level, kept: &mut Kept) -> Hinted<Self> {
        Self::in_edition(kit, theme, level, Edition::Colour, kept)
    }

    /// As [`Party::with`], drawn for one edition. Pieces of the large-print edition still have their usual sizes: how
    /// large they must become only type setting knows.
    ///
    /// # Errors
    /// As [`Party::new`].
    pub fn in_edition(kit: &Kit, theme: &Loaded, level: Level, edition: Edition, kept: &mut Kept) -> Hinted<Self> {
        let palette = Palette::new(&theme.theme.palette, &kit.look.palette)?.in_edition(edition);
        let mut script = Script::new(kit, &theme.theme, level);
        let mut troubles = Vec::new();
        let colours = untold::telling_colours(theme, &mut troubles);
        untold::fill_names(kit, &mut script);
        let positions = Positions::of(kit);
        let pictures = kept.pictures(&palette);
        let scene = laid::Scene { kit, theme, palette: &palette, script: &script, colours: &colours };
        let table = laid::Table::new(scene, &positions, &pictures);
        kept.share(table.shared());
        // The texts of puzzles stand in the script in the kit's order.
        let known: Vec<(laid::Job<'_>, Option<Key>, Option<laid::Made>)> = kit
            .puzzles
            .iter()
            .zip(&script.puzzles)
            .map(|(puzzle, text)| {
                let job = (puzzle, text);
                let key = table.key(job);
                let made = key.as_ref().and_then(|key| kept.get(&puzzle.id, key));
                (job, key, made)
            })
            .collect();
        let ahead = || read_ahead(kit, theme, &palette, &pictures);
        let lay = || -> Vec<(Option<Key>, laid::Made)> {
            known
                .into_par_iter()
                .map(|(job, key, made)| match made {
                    Some(mut made) => {
                        // The hints alone, of all that is kept, do not go into the laying out.
                        made.puzzle.hints = job.1.hints.clone();
                        (None, made)
                    }
                    None => (key, table.lay(job)),
                })
                .collect()
        };
        let (laid, ()) = rayon::join(lay, ahead);
        let (mut puzzles, mut pieces) = (Vec::new(), Vec::new());
        for (new, made) in laid {
            if let Some(key) = new {
                kept.put(&made.puzzle.id, key, &made);
            }
            let mut printed = made.pieces;
            stock(&mut printed, &made.puzzle.prep);
            puzzles.push(made.puzzle);
            pieces.extend(printed);
            troubles.extend(made.trouble);
        }
        let mut party = Self { level, palette, script, puzzles, pieces, troubles, positions, pictures };
        party.add(|party| notes::notes(party, theme));
        party.add(|party| labels::labels(party, kit, theme));
        party.add(|party| lock_tags::lock_tags(party, kit, theme));
        party.add(|party| printed::printed(party, kit, theme));
        party.add(|party| tokens::tokens(party, kit, theme));
        party.add(|party| slips::slips(party, kit, theme));
        // Labels are printed beside the pieces, with the names that authors gave to things.
        party.pieces.iter_mut().for_each(|piece| piece.label = typographic(&piece.label));
        Ok(party)
    }

    /// The edition that the pieces are drawn for.
    #[must_use]
    pub const fn edition(&self) -> Edition {
        self.palette.edition()
    }

    /// Whether it is in large print.
    #[must_use]
    pub fn large(&self) -> bool {
        self.edition() == Edition::LargePrint
    }

    /// A puzzle, laid out and read.
    #[must_use]
    pub fn puzzle(&self, id: &PuzzleId) -> Option<&LaidPuzzle> {
        // The puzzles stand in the kit's order.
        let known = self.positions.at(id).and_then(|at| self.puzzles.get(at));
        known.filter(|puzzle| puzzle.id == *id)
    }

    /// A printed piece by its id.
    #[must_use]
    pub fn piece(&self, id: &str) -> Option<&Piece> {
        self.pieces.iter().find(|piece| piece.id == id)
    }

    /// What each puzzle takes beforehand, for the preparation's plan.
    #[must_use]
    pub fn prep_steps(&self) -> Vec<PuzzleSteps> {
        let printed = |id: &PuzzleId| {
            let own = self.pieces.iter().filter(|piece| piece.group == id.as_str());
            own.map(|piece| usize::from(piece.copies)).sum()
        };
        self.puzzles
            .iter()
            .map(|laid| PuzzleSteps {
                puzzle: laid.id.clone(),
                title: self.script.puzzle(&laid.id).map(|text| text.title.clone()).unwrap_or_default(),
                steps: laid.prep.clone(),
                kinds: laid.kinds.clone(),
                pieces: printed(&laid.id),
            })
            .collect()
    }

    /// The story letter on a page whose printable area has this `size`.
    ///
    /// # Errors
    /// When the theme lacks the letter's head or foot, or the area is too small for a letter.
    pub fn letter(&self, theme: &Loaded, size: Size) -> Hinted<Piece> {
        letter::letter(self, theme, size)
    }

    /// The story letter on pages whose printable area has this `size`: one, or as many as large print needs.
    ///
    /// # Errors
    /// As [`Party::letter`], and when a page cannot be set.
    pub fn letters(&self, theme: &Loaded, size: Size, fits: Fits<'_>) -> Hinted<Vec<Piece>> {
        match self.edition() {
            Edition::Colour | Edition::LowInk => Ok(vec![self.letter(theme, size)?]),
            Edition::LargePrint => letter::large(self, theme, size, fits),
        }
    }

    /// A short text of the kit, such as a name, with its slots filled; as written where that fails.
    #[must_use]
    pub fn say(&self, text: &str) -> String {
        self.script.words.fill(text).unwrap_or_else(|_| text.to_owned())
    }

    /// A copy of `kit` whose names, titles and remarks have their slots filled, for texts about the kit. It is
    /// never saved.
    #[must_use]
    pub fn spoken(&self, kit: &Kit) -> Kit {
        let mut kit = kit.clone();
        let fill = |texts: &mut [&mut String]| {
            for text in texts {
                **text = self.say(text);
            }
        };
        kit.boxes.iter_mut().for_each(|item| fill(&mut [&mut item.name, &mut item.about]));
        kit.locks.iter_mut().for_each(|lock| fill(&mut [&mut lock.name, &mut lock.how_to_set]));
        kit.spots.iter_mut().for_each(|spot| fill(&mut [&mut spot.name, &mut spot.about]));
        kit.props.iter_mut().for_each(|prop| fill(&mut [&mut prop.name, &mut prop.about]));
        kit.puzzles.iter_mut().for_each(|puzzle| fill(&mut [&mut puzzle.title]));
        let own = kit.puzzles.iter_mut().flat_map(|puzzle| &mut puzzle.preparation).chain(&mut kit.preparation);
        own.for_each(|step| {
            fill(&mut [&mut step.what]);
            step.takes = std::mem::take(&mut step.takes).into_iter().map(|(what, of)| (self.say(&what), of)).collect();
        });
        kit.notes.iter_mut().for_each(|note| fill(&mut [&mut note.title]));
        fill(&mut [&mut kit.title, &mut kit.brief, &mut kit.finish.treat, &mut kit.finish.cue]);
        kit
    }

    /// What guests can reach in `kit` with these puzzles. A puzzle that could not be laid out is taken to have
    /// the parts that the kit lays somewhere, so that one fault is not told twice.
    #[must_use]
    pub fn flow(&self, kit: &Kit) -> Flow {
        let spoken = self.spoken(kit);
        let mut flow = flow::flow(&spoken, &self.parts(kit));
        flow.close = flow::facts::close_pairs(&spoken, &self.apart());
        flow
    }

    /// The parts that the puzzles of `kit` have: those laid out, or where that failed those that the kit lays somewhere.
    #[must_use]
    pub fn parts<'a>(&self, kit: &'a Kit) -> flow::Parts<'a> {
        let parts = kit.puzzles.iter().zip(&self.puzzles).map(|(puzzle, laid)| {
            let parts = match laid.laid {
                Ok(_) => laid.parts.clone(),
                Err(_) => puzzle.parts.keys().map(String::as_str).collect(),
            };
            (puzzle.id.clone(), parts)
        });
        parts.collect()
    }

    /// The pairs of parts that the mechanics want to lie apart.
    fn apart(&self) -> Vec<Apart> {
        let laid = self.puzzles.iter().filter_map(|puzzle| Some((&puzzle.id, puzzle.laid.as_ref().ok()?)));
        let part = |id: &PuzzleId, part: &str| Lying::Part(id.clone(), part.to_owned());
        laid.flat_map(|(id, view)| {
            view.apart().into_iter().map(|(one, other)| Apart {
                one: part(id, one),
                other: part(id, other),
                why: String::new(),
                together: false,
            })
        })
        .collect()
    }

    /// The dressing of what belongs to no puzzle: frames, symbols and colours of the theme.
    fn plain_dressing<'a>(&'a self, theme: &'a Loaded, puzzle: &'a PuzzleId) -> Dressing<'a> {
        bare_dressing(theme, &self.palette, &self.pictures, puzzle)
    }

    fn add(&mut self, make: impl FnOnce(&Self) -> Vec<(Anchor, Hinted<Piece>)>) {
        for (at, made) in make(self) {
            match made {
                Ok(piece) => self.pieces.push(piece),
                Err(trouble) => self.troubles.push((at, trouble)),
            }
        }
    }
}

fn bare_dressing<'a>(
    theme: &'a Loaded,
    palette: &'a Palette,
    pictures: &'a Pictures,
    puzzle: &'a PuzzleId,
) -> Dressing<'a> {
    let lock = &crate::kit::LockKind::Key;
    Dressing { puzzle, mechanic: "", lock, lock_name: "", mark: "", names: &NO_NAMES, theme, palette, pictures }
}

/// Reads the frames that will be asked for one after another once the puzzles are laid out.
fn read_ahead(kit: &Kit, theme: &Loaded, palette: &Palette, pictures: &Pictures) {
    let id = PuzzleId::from_text("frames");
    let cx = bare_dressing(theme, palette, pictures, &id);
    let mut names: Vec<&str> = kit.notes.iter().map(|note| notes::frame_of(note.kind)).collect();
    names.extend((!kit.puzzles.is_empty()).then_some("token"));
    names.extend(kit.boxes.iter().any(|item| item.label.is_some()).then_some("label"));
    for name in names {
        // What cannot be read is told by the piece that stands on it.
        drop(cx.frame(name));
    }
}
