//! `picture-grid`: the lengths of the runs of ink in rows and columns; each filled panel shows a digit,
//! a letter or an arrow.

mod draw;
pub mod glyphs;
pub mod read;
mod reread;
mod solved;
mod texts;

use serde::{Deserialize, Serialize};

use super::{Dressing, Job, Mechanic, Meta, Part, Rng};
use crate::diag::{Hinted, Trouble};
use crate::face::Piece;
use crate::face::proof::Printed;
use crate::kit::material::PrepStep;
use crate::kit::{HintLadder, LockKind};
use crate::limits;
use crate::mechanics::paper;
use crate::mechanics::solved::Solved;
use crate::mechanics::words::{pushes, symbols};
use crate::mechanics::work::{Effort, Work, arranged, counted, times};
use crate::readings::runs::{Cell, Runs};
use crate::readings::{Budget, Readings};
use crate::script::capital;
use glyphs::{Shape, Shows};
use rand::RngExt as _;
use rand::seq::SliceRandom as _;

/// The mechanic.
#[derive(Debug)]
pub struct PictureGrid;

const SHEET: &str = "panels";

/// The order rule as the sheet prints it.
const ORDER: &str = "Read the panels in the order of their numbers.";

/// What the author chooses.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Setup {
    /// How the digits, letters or arrows are drawn.
    pub shape: Shape,
    /// Blank rows and columns round the symbol, so that its place in the panel is not known beforehand.
    pub margin: u8,
    /// How much work it shall be.
    pub work: Effort,
}

impl Default for Setup {
    fn default() -> Self {
        Self { shape: Shape::Thin, margin: 1, work: Effort::Fair }
    }
}

/// What guests see.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct View {
    /// The panels in the order of their numbers.
    pub panels: Vec<Panel>,
    /// What they show.
    #[serde(default)]
    pub shows: Shows,
}

/// A panel: the lengths of the runs of its rows and columns.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Panel {
    /// Of each row, from left to right.
    pub rows: Vec<Vec<usize>>,
    /// Of each column, from top to bottom.
    pub cols: Vec<Vec<usize>>,
    /// Row and column of the cells that are filled from the start.
    #[serde(default)]
    pub given: Vec<(usize, usize)>,
}

impl Panel {
    fn runs(&self) -> Runs {
        Runs { rows: self.rows.clone(), cols: self.cols.clone() }
    }

    /// The grid as guests get it; cells given beyond its edge are left out.
    fn start(&self) -> Vec<Vec<Cell>> {
        let mut grid = self.runs().open();
        for (row, col) in &self.given {
            if let Some(cell) = grid.get_mut(*row).and_then(|line| line.get_mut(*col)) {
                *cell = Cell::Ink;
            }
        }
        grid
    }
}

impl Mechanic for PictureGrid {
    type Setup = Setup;
    type View = View;

    const META: Meta = Meta {
        id: "picture-grid",
        name: "Picture grid",
        guests: "fill cells by the numbers beside rows and columns until each panel shows a digit, a letter or an arrow",
        order: "the numbers of the panels",
        prints: "the sheet with the panels",
        host: "cuts it out and has pencils ready",
        help: texts::HELP,
        parts: &[Part { key: SHEET, name: "the sheet of panels", printed: true, optional: false }],
        minutes: (5, 12),
        least_age: 8,
        tools: &[],
        colour: false,
    };

    fn lay_out(&self, setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
        let pushed = matches!(job.lock, LockKind::Directions(_));
        let answer = if pushed { pushes(job.answer, job.lock)? } else { symbols(job.answer, job.lock)? };
        let shows = match () {
            () if pushed => Shows::Arrows,
            () if answer.iter().all(char::is_ascii_digit) => Shows::Digits,
            () if answer.iter().all(char::is_ascii_uppercase) => Shows::Letters,
            () => {
                return Err(Trouble::new(
                    "a sheet shows digits or letters A to Z, and the answer is neither throughout",
                )
                .hint("write an answer of digits only, or of letters A to Z only"));
            }
        };
        if answer.len() > limits::PANELS {
            return Err(Trouble::new(format!("{} panels do not fit on a sheet", answer.len()))
                .hint(format!("give the puzzle a lock of at most {} wheels", limits::PANELS)));
        }
        if setup.margin > limits::PANEL_MARGIN {
            return Err(Trouble::new(format!("a margin of {} cells makes the panels too small to fill", setup.margin))
                .hint(format!("take a `margin` of at most {}", limits::PANEL_MARGIN)));
        }
        arranged(setup.work, rng, &mut |rng| panels(setup, &answer, shows, rng), &work)
    }

    fn readings(&self, view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
        read::readings(view, lock, budget)
    }

    fn reread(&self, printed: &[Printed], cx: &Dressing<'_>) -> Option<Hinted<View>> {
        Some(reread::view(printed, cx))
    }

    fn parts(&self, _: &View) -> Vec<&'static str> {
        vec![SHEET]
    }

    fn pieces(&self, view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
        Ok(vec![draw::sheet(view, cx)?])
    }

    fn prep(&self, _: &View, _: &Dressing<'_>) -> Vec<PrepStep> {
        paper::prep()
    }

    fn reason(&self, view: &View, cx: &Dressing<'_>) -> String {
        texts::reason(view, cx)
    }

    fn work(&self, view: &View) -> Option<Work> {
        work(view)
    }

    fn solved(&self, view: &View) -> Option<Solved> {
        solved::solved(view)
    }

    fn reset(&self, _: &View, cx: &Dressing<'_>) -> String {
        paper::reset(&[texts::name(cx)])
    }

    fn draft_hints(&self, view: &View, cx: &Dressing<'_>) -> HintLadder {
        texts::draft_hints(view, cx)
    }
}

/// Blank lines that a deep puzzle has beyond the author's, for then more places must be thought of.
const DEEP_MARGIN: u8 = 2;
/// Of so many inked cells one is given in a light puzzle.
const GIVEN_OF: usize = 3;

fn panels(setup: &Setup, answer: &[char], shows: Shows, rng: &mut Rng) -> Hinted<View> {
    let deep = if setup.work == Effort::Deep { DEEP_MARGIN } else { 0 };
    let margin = usize::from(setup.margin.saturating_add(deep).min(limits::PANEL_MARGIN));
    let mut panels = Vec::new();
    for symbol in answer {
        let glyph = shows.picture(setup.shape, *symbol).ok_or_else(|| {
            Trouble::new(format!("there is no picture of {symbol}"))
                .hint("write an answer of digits, or of letters A to Z, or of directions for a lock that has them")
        })?;
        // The symbol stands anywhere within its margin, so that equal symbols need not have equal panels. Panels of arrows
        // are square: a broad one would tell at sight that its arrow lies.
        let (w, h) = (glyph.first().map_or(0, Vec::len), glyph.len());
        let side = if shows == Shows::Arrows { w.max(h) } else { 0 };
        let (width, height) = (w.max(side) + margin, h.max(side) + margin);
        let (left, top) = (rng.random_range(0..=width - w), rng.random_range(0..=height - h));
        let mut picture = vec![vec![false; width]; height];
        let mut inked = Vec::new();
        for (row, line) in glyph.iter().enumerate() {
            for (col, _) in line.iter().enumerate().filter(|(_, ink)| **ink) {
                picture[row + top][col + left] = true;
                inked.push((row + top, col + left));
            }
        }
        let mut given = Vec::new();
        if setup.work == Effort::Light {
            inked.shuffle(rng);
            given = inked.split_off(inked.len() - inked.len() / GIVEN_OF);
            given.sort_unstable();
        }
        let Runs { rows, cols } = Runs::of(&picture);
        panels.push(Panel { rows, cols, given });
    }
    Ok(View { panels, shows })
}

/// Lines that tell something new, over all panels; a cell that no line settles counts 8 (the weight is our estimate).
fn work(view: &View) -> Option<Work> {
    let (mut told, mut passes, mut open) = (0, 0, 0);
    for panel in &view.panels {
        if panel.rows.len() > limits::PANEL_CELLS || panel.cols.len() > limits::PANEL_CELLS {
            return None;
        }
        let looks = panel.runs().looks(panel.start())?;
        (told, passes, open) = (told + looks.told, passes + looks.passes, open + looks.open);
    }
    let guess = match open {
        0 => "No guess is needed.".to_owned(),
        open => format!("{} can be found only by trying.", capital(&counted(open, "cell"))),
    };
    let says = format!("In all, guests go through the rows and columns of the panels {}. {guess}", times(passes));
    Some(Work::new(told + 8 * open, says))
}
