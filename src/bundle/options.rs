use std::path::PathBuf;

use crate::diag::{Hinted, Level, Trouble};
use crate::sheet::Paper;
use crate::theme::Edition;

/// What to export, and where to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Options {
    /// The papers to lay out for, each on its own.
    pub papers: Vec<Paper>,
    /// The play levels to export.
    pub levels: Vec<Level>,
    /// The editions to export, each proven on its own. Pictures of single pieces are made of the first.
    pub editions: Vec<Edition>,
    /// Whether the bundle also holds all its files in one zip file.
    pub zip: bool,
    /// Whether each paper and level also comes as one PDF of everything, the guests' pages first.
    pub one_pdf: bool,
    /// Whether the bundle also holds what the kit is sold by: cover, contact sheets, description, terms, credits. Drawing
    /// them takes longer than all else, so they are made when asked for.
    pub listing: bool,
    /// Whether to export although findings block it; the host guide then says so on its first page.
    pub force: bool,
    /// How many groups play at once, each with all that it needs.
    pub groups: u16,
    /// How far the author's own printer is off on backs.
    pub shift: Shift,
    /// The folder in which the bundle's own folder, named by the kit's id, is put.
    pub out: PathBuf,
}

impl Default for Options {
    /// Both papers, all levels, in colour, into `out`.
    fn default() -> Self {
        Self {
            papers: Paper::ALL.to_vec(),
            levels: Level::ALL.to_vec(),
            editions: vec![Edition::Colour],
            zip: false,
            one_pdf: false,
            listing: false,
            force: false,
            groups: 1,
            shift: Shift::default(),
            out: PathBuf::from("out"),
        }
    }
}

/// How far a printer's backs lie off their fronts, seen from the front, in tenths of a millimetre: what the printer
/// test shows, and what is then taken back.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shift {
    /// To the right; left is below 0.
    pub right: i16,
    /// Down; up is below 0.
    pub down: i16,
}

impl Shift {
    /// The most that a setting takes back, in tenths: a printer that is off by more needs mending.
    pub const MOST: i16 = 150;

    /// Reads `1.5,-0.4`: millimetres right and down.
    ///
    /// # Errors
    /// When these are not two numbers within bounds.
    pub fn parse(text: &str) -> Hinted<Self> {
        let tenths = |number: &str| -> Option<i16> {
            let tenths = (number.trim().parse::<f64>().ok()? * 10.0).round();
            let most = f64::from(Self::MOST);
            #[expect(clippy::cast_possible_truncation, reason = "within bounds")]
            (-most..=most).contains(&tenths).then_some(tenths as i16)
        };
        let numbers = text.split_once(',').and_then(|(right, down)| Some((tenths(right)?, tenths(down)?)));
        let (right, down) = numbers.ok_or_else(|| {
            Trouble::new(format!("\"{text}\" is no printer's shift"))
                .hint("write millimetres right and down, as in 1.5,-0.4; at most 15 each way")
        })?;
        Ok(Self { right, down })
    }
}

/// How far an export has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: usize,
    /// Steps in all.
    pub of: usize,
    /// What was done last, in a few words.
    pub what: String,
}

/// What is told of a document that has nothing to print.
pub const NOTHING: &str = "nothing to print";

/// Whether to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Go {
    /// Go on.
    On,
    /// Stop; nothing is left behind.
    Stop,
}
