use super::laid;
use super::untold::telling_colours;
use crate::diag::{Hinted, Level};
use crate::face::Pictures;
use crate::kit::{Kit, Positions, Puzzle};
use crate::mechanics::AnyView;
use crate::readings::{Budget, Readings, Verdict};
use crate::script::Script;
use crate::theme::{Colour, Loaded, Palette};

/// Lays out puzzles one by one, as [`super::Party::new`] would, to see whether they carry an answer: nothing is
/// printed and nothing is kept.
#[derive(Debug)]
pub struct Trial<'a> {
    kit: &'a Kit,
    theme: &'a Loaded,
    palette: Palette,
    script: Script,
    colours: Vec<(&'a str, Colour)>,
    positions: Positions,
    pictures: Pictures,
}

impl<'a> Trial<'a> {
    /// Trials of the puzzles of a kit at one level.
    ///
    /// # Errors
    /// When the palette of the theme or of the kit cannot be read.
    pub fn new(kit: &'a Kit, theme: &'a Loaded, level: Level) -> Hinted<Self> {
        let palette = Palette::new(&theme.theme.palette, &kit.look.palette)?;
        let script = Script::new(kit, &theme.theme, level);
        let colours = telling_colours(theme, &mut Vec::new());
        let (positions, pictures) = (Positions::of(kit), Pictures::default());
        Ok(Self { kit, theme, palette, script, colours, positions, pictures })
    }

    /// The setup of a puzzle at this level, its slots filled.
    fn setup<'s>(&'s self, puzzle: &'s Puzzle) -> &'s str {
        let text = self.positions.at(&puzzle.id).and_then(|at| self.script.puzzles.get(at));
        text.map_or(puzzle.setup.ron(), |text| text.setup.as_str())
    }

    /// The symbols to which the mechanic of `puzzle` keeps with its setup at this level; none where it takes any.
    #[must_use]
    pub fn symbols(&self, puzzle: &Puzzle) -> Option<Vec<char>> {
        let lock = self.kit.lock(&puzzle.opens)?;
        crate::mechanics::find(&puzzle.mechanic).ok()?.symbols(self.setup(puzzle), &lock.kind)
    }

    /// The texts of the kit at this level.
    #[must_use]
    pub const fn script(&self) -> &Script {
        &self.script
    }

    /// Lays `puzzle` out for `answer` and reads it.
    ///
    /// # Errors
    /// When the mechanic cannot carry the answer, or the puzzle has no mechanic or lock.
    pub fn lay(&self, puzzle: &Puzzle, answer: &str) -> Hinted<(Box<dyn AnyView>, Readings)> {
        self.lay_setup(puzzle, self.setup(puzzle), answer)
    }

    /// As [`Trial::lay`], with another setup in RON, its slots filled.
    ///
    /// # Errors
    /// As [`Trial::lay`].
    pub fn lay_setup(&self, puzzle: &Puzzle, setup: &str, answer: &str) -> Hinted<(Box<dyn AnyView>, Readings)> {
        let scene = laid::Scene {
            kit: self.kit,
            theme: self.theme,
            palette: &self.palette,
            script: &self.script,
            colours: &self.colours,
        };
        let (lock, view) = laid::Table::new(scene, &self.positions, &self.pictures).view(puzzle, setup, answer)?;
        let readings = view.readings(&lock.kind, &mut Budget::default());
        Ok((view, readings))
    }

    /// How what guests can read compares with `answer`, when `puzzle` is laid out for it.
    ///
    /// # Errors
    /// As [`Trial::lay`].
    pub fn verdict(&self, puzzle: &Puzzle, answer: &str) -> Hinted<Verdict> {
        self.lay(puzzle, answer).map(|(_, readings)| readings.verdict(answer))
    }
}
