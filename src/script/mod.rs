//! A kit's texts at one play level, with every slot filled and all markup parsed.

mod english;
mod markup;
mod readability;
mod rich;
mod slots;
mod stem;
mod syllables;

pub use english::{article, capital, plural as many, several_already, title_case, typographic};
pub use markup::parse;
pub use readability::{ALOUD, Readability};
pub use rich::{Paragraph, Rich, Span};
pub use slots::Words;
pub use stem::{WordAt, same_word, stems, words_of};
pub use syllables::syllables;

use std::collections::BTreeMap;

use crate::diag::{Anchor, Hinted, Level, PuzzleField, Step, Trouble};
use crate::files::VPath;
use crate::ids::{NoteId, PuzzleId};
use crate::kit::{HintLadder, Kit, NoteKind};
use crate::theme::Theme;

/// The finished texts of a kit at one level: no slot is left.
#[derive(Clone, Debug)]
pub struct Script {
    /// The kit's title.
    pub title: String,
    /// The story in brief, for the host.
    pub brief: String,
    /// The letter.
    pub letter: LetterText,
    /// The smaller texts, in the kit's order.
    pub notes: Vec<NoteText>,
    /// The puzzles' texts, in the kit's order.
    pub puzzles: Vec<PuzzleText>,
    /// Slots that could not be filled, and where. The text then shows the slot as the author wrote it.
    pub unfilled: Vec<(Anchor, Trouble)>,
    /// The words that filled the slots.
    pub words: Words,
}

/// The letter, finished.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LetterText {
    /// Heading.
    pub heading: Rich,
    /// Salutation.
    pub salutation: Rich,
    /// Story.
    pub body: Rich,
    /// Closing.
    pub closing: Rich,
    /// Signature.
    pub signature: Rich,
}

/// A smaller text, finished.
#[derive(Clone, Debug)]
pub struct NoteText {
    /// Which one.
    pub id: NoteId,
    /// What it is.
    pub kind: NoteKind,
    /// Title.
    pub title: Rich,
    /// Text.
    pub text: Rich,
    /// The kit's picture beside the text.
    pub picture: Option<VPath>,
}

/// A puzzle's texts, finished.
#[derive(Clone, Debug)]
pub struct PuzzleText {
    /// Which one.
    pub id: PuzzleId,
    /// Title.
    pub title: String,
    /// The setup in RON, slots filled.
    pub setup: String,
    /// What the puzzle calls its own parts, slots filled.
    pub names: BTreeMap<String, String>,
    /// The hints as the author wrote them, slots filled.
    pub hints: HintLadder,
}

impl Script {
    /// Fills every text of `kit` at `level` with the words of the theme and of the kit.
    #[must_use]
    pub fn new(kit: &Kit, theme: &Theme, level: Level) -> Self {
        let words = Words::new(theme, kit);
        let mut unfilled: Vec<(Anchor, Trouble)> =
            words.unfilled().iter().map(|(name, trouble)| (Anchor::Word(name.clone()), trouble.clone())).collect();
        let mut fill = |at: Anchor, text: &str| -> String { keep(words.fill(text), text, at, &mut unfilled) };
        let letter = LetterText {
            heading: parse(&fill(Anchor::Letter, &kit.letter.heading)),
            salutation: parse(&fill(Anchor::Letter, &kit.letter.salutation)),
            body: parse(&fill(Anchor::Letter, &kit.letter.body)),
            closing: parse(&fill(Anchor::Letter, &kit.letter.closing)),
            signature: parse(&fill(Anchor::Letter, &kit.letter.signature)),
        };
        let notes = kit
            .notes
            .iter()
            .map(|note| NoteText {
                id: note.id.clone(),
                kind: note.kind,
                title: parse(&fill(Anchor::Note(note.id.clone()), &note.title)),
                text: parse(&fill(Anchor::Note(note.id.clone()), &note.text)),
                picture: note.picture.clone(),
            })
            .collect();
        let title = fill(Anchor::Kit, &kit.title);
        let brief = fill(Anchor::Kit, &kit.brief);
        let mut puzzles = Vec::new();
        for puzzle in &kit.puzzles {
            let at = |field| Anchor::Puzzle(puzzle.id.clone(), field);
            let mut hints = puzzle.hints_at(level);
            for step in Step::ALL {
                let text = hints.step_mut(step);
                *text = fill(at(PuzzleField::Hint(level, step)), text);
            }
            let name = |(key, name): (&String, &String)| (key.clone(), fill(at(PuzzleField::Name(key.clone())), name));
            let names = puzzle.names.iter().map(name).collect();
            puzzles.push(PuzzleText {
                id: puzzle.id.clone(),
                title: fill(at(PuzzleField::Title), &puzzle.title),
                setup: String::new(),
                names,
                hints,
            });
        }
        for (text, puzzle) in puzzles.iter_mut().zip(&kit.puzzles) {
            let raw = puzzle.setup_at(level).ron();
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Setup);
            text.setup = keep(words.fill_ron(raw), raw, at, &mut unfilled);
        }
        Self { title, brief, letter, notes, puzzles, unfilled, words }
    }

    /// The texts of a puzzle.
    #[must_use]
    pub fn puzzle(&self, id: &PuzzleId) -> Option<&PuzzleText> {
        self.puzzles.iter().find(|puzzle| puzzle.id == *id)
    }
}

/// A text that could not be filled stays as it was written and is put on the list.
fn keep(filled: Hinted<String>, raw: &str, at: Anchor, unfilled: &mut Vec<(Anchor, Trouble)>) -> String {
    filled.unwrap_or_else(|trouble| {
        unfilled.push((at, trouble));
        raw.to_owned()
    })
}
