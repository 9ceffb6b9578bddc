//! `domino-chain`: dominoes that chain in one way from a marked first piece; the pips where two meet are the answer.

mod draw;
mod read;
mod reread;
mod solved;
mod texts;
mod work;

use rand::RngExt as _;
use rand::seq::SliceRandom as _;
use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::{Need, PrepStep};
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::slips::Slip;
use crate::mechanics::solved::Solved;
use crate::mechanics::words::{digits_only, symbols};
use crate::mechanics::work::{Effort, Work, arranged};
use crate::readings::{Budget, Readings};

/// The mechanic.
#[derive(Debug)]
pub struct DominoChain;

const PIECES: &str = "pieces";
const CARD: &str = "card";

/// The order rule as the card prints it.
const ORDER: &str = "Start with the piece that says “first piece”. Lay all pieces in one row. Halves that touch must have \
                     the same number of dots. Then start at the first piece and read the number at each place where \
                     two pieces touch. Read it once, not twice. A blank half is 0.";

/// What the author chooses.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// A line above the rule on the card.
    pub card_text: String,
    /// How much work it shall be.
    pub work: Effort,
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// A line above the rule on the card.
    pub card_text: String,
    /// The pips of both halves of each piece, in the order in which they are printed.
    pub pieces: Vec<(u8, u8)>,
    /// Which piece is marked as the first.
    pub first: Option<usize>,
    /// Whether each piece carries an arrow from its left half to its right one, which points away from the first.
    #[serde(default)]
    pub arrows: bool,
}

impl View {
    /// The order rule as the card prints it.
    fn order(&self) -> String {
        let arrows = if self.arrows { " Each arrow points away from the first piece." } else { "" };
        format!("{ORDER}{arrows}")
    }
}

impl Mechanic for DominoChain {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "domino-chain",
        name: "Domino chain",
        guests: "lay dominoes in a row from the first piece on, and read the pips where two pieces touch",
        order: "the row, from the marked first piece on",
        prints: "the dominoes and the rule card",
        host: "cuts them out and shuffles them",
        help: texts::HELP,
        parts: &[
            Part { key: PIECES, name: "the dominoes", printed: true, optional: false },
            Part { key: CARD, name: "the domino card", printed: true, optional: false },
        ],
        minutes: (2, 6),
        least_age: 6,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let answer = symbols(job.answer, job.lock)?;
        digits_only(&answer)?;
        if !(2..limits::DOMINOES).contains(&answer.len()) {
            return Err(Trouble::new(format!("a row of dominoes has no {} places to read", answer.len()))
                .hint(format!("give the puzzle a lock of 2 to {} wheels", limits::DOMINOES - 1)));
        }
        arranged(setup.work, rng, &mut |rng| row(setup, &answer, job.lock, rng), &work::work)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], _: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![PIECES, CARD]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        draw::pieces(view, cx)
    }

    fn prep(&self, view: &View, cx: &Dressing<'_>) -> Vec<PrepStep> {
        let pieces = texts::pieces_name(cx);
        vec![PrepStep {
            key: "cut",
            what: format!("Count {pieces}: there are {}. Shuffle them.", view.pieces.len()),
            needs: vec![Need { material: "card-paper", amount: 1.0 }, Need { material: "scissors", amount: 1.0 }],
            hands: 1.0,
            wait: 0.0,
            after: vec![],
        }]
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        work::work(view)
    }

    fn slips(&self, view: &View, _: &LockKind) -> Vec<Slip> {
        solved::slips(view)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        format!("Count {}, shuffle them and put them back.", texts::pieces_name(cx))
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}

/// The pieces whose row reads the answer, and no other.
fn row(setup: &Setup, answer: &[char], lock: &LockKind, rng: &mut Rng) -> Hinted<View> {
    let joins: Vec<u8> =
        answer.iter().filter_map(|digit| digit.to_digit(10).and_then(|digit| u8::try_from(digit).ok())).collect();
    // The outer halves of the row take numbers of their own where there are any, so that nothing fits there.
    let mut ends: Vec<u8> = (0..=9).filter(|pips| !joins.contains(pips)).collect();
    ends.shuffle(rng);
    let end = |at: usize| ends.get(at).or(ends.first()).copied().unwrap_or_default();
    if setup.work == Effort::Deep {
        // Where the outer half of the first piece fits elsewhere, the row can be begun the wrong way round.
        let mut starts = joins.clone();
        starts.shuffle(rng);
        for start in starts {
            if let Ok(view) = chained(setup, start, &joins, end(1), lock, rng) {
                return Ok(view);
            }
        }
    }
    chained(setup, end(0), &joins, end(1), lock, rng)
}

fn chained(setup: &Setup, first: u8, joins: &[u8], last: u8, lock: &LockKind, rng: &mut Rng) -> Hinted<View> {
    let row: Vec<u8> = [first].into_iter().chain(joins.iter().copied()).chain([last]).collect();
    let arrows = setup.work == Effort::Light;
    let mut pieces: Vec<(usize, (u8, u8))> = row
        .windows(2)
        .enumerate()
        .map(|(at, halves)| {
            let (a, b) = (halves[0], halves[1]);
            (at, if rng.random() || arrows { (a, b) } else { (b, a) })
        })
        .collect();
    pieces.shuffle(rng);
    let first = pieces.iter().position(|(at, _)| *at == 0);
    let pieces: Vec<(u8, u8)> = pieces.into_iter().map(|(_, piece)| piece).collect();
    let view = View { card_text: setup.card_text.trim().to_owned(), pieces, first, arrows };
    let found = read::readings(&view, lock, &mut Budget::new(limits::GRID_STEPS));
    if found.list.len() == 1 && !found.unproven {
        return Ok(view);
    }
    let answer: String = joins.iter().map(u8::to_string).collect();
    let other = found.list.iter().find(|reading| reading.answer != answer);
    let also = other.map_or(String::new(), |other| format!(": the same pieces also read {}", other.answer));
    let trouble = Trouble::new(format!("the dominoes for {answer} chain in more than one way{also}"));
    Err(if arrows {
        trouble.hint(
            "two ways lead from one digit back to it, and either may come first: let that digit stand twice at most",
        )
    } else {
        trouble
            .hint("what lies between a digit and the same digit again can be turned round: let no digit come again after two others that differ")
            .hint("or set `work: Light`: its arrows tell which way round a piece lies")
    })
}
