use super::Party;
use crate::diag::{Anchor, PuzzleField};
use crate::face::{Audience, Layer, Piece};
use crate::kit::Kit;

/// A text that guests read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OnView {
    /// Where it is written.
    pub from: Anchor,
    /// What it is called: "the letter".
    pub name: String,
    /// The text, slots filled.
    pub text: String,
}

/// The words that go with a piece, by what they are.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PieceWords {
    /// What is printed inside the cut line.
    pub printed: Vec<String>,
    /// What stands beside it: label, file name, descriptions; each with what it is.
    pub beside: Vec<(&'static str, String)>,
}

impl Party {
    /// Every text that guests read from the start or find: titles, letter, names, and all that is printed for them
    /// except hints.
    #[must_use]
    pub fn on_view(&self, kit: &Kit) -> Vec<OnView> {
        let script = &self.script;
        let letter = &script.letter;
        let text = |from: Anchor, name: &str, text: String| OnView { from, name: name.to_owned(), text };
        let mut texts = vec![text(Anchor::Kit, "the kit's title", script.title.clone())];
        for part in [&letter.heading, &letter.salutation, &letter.body, &letter.closing, &letter.signature] {
            texts.push(text(Anchor::Letter, "the letter", part.text()));
        }
        for puzzle in &script.puzzles {
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Title);
            texts.push(text(at, &format!("the title \"{}\"", puzzle.title), puzzle.title.clone()));
        }
        for item in &kit.boxes {
            texts.push(text(Anchor::Box(item.id.clone()), "the name of a box", self.say(&item.name)));
        }
        for lock in &kit.locks {
            texts.push(text(Anchor::Lock(lock.id.clone()), "the name of a lock", self.say(&lock.name)));
        }
        // A banner's letters stand on a flag each, and are read together.
        for prop in &kit.props {
            let Some(printed) = &prop.printed else { continue };
            for words in printed.texts().chain([printed.back.as_str()]).filter(|words| !words.is_empty()) {
                let name = format!("what stands on {}", self.say(&prop.name));
                texts.push(text(Anchor::Prop(prop.id.clone()), &name, self.say(words)));
            }
        }
        for piece in self.pieces.iter().filter(|piece| piece.audience == Audience::Players) {
            for face in std::iter::once(&piece.front).chain(&piece.back) {
                texts.extend(face.runs().map(|run| OnView {
                    from: run.from.clone(),
                    name: format!("\"{}\"", piece.label),
                    text: run.text.text(),
                }));
            }
        }
        texts
    }
}

/// The words that go with a piece.
#[must_use]
pub fn words_of(piece: &Piece) -> PieceWords {
    let mut words = PieceWords::default();
    words.beside.extend([("label", piece.label.clone()), ("file name", piece.id.clone())]);
    for face in std::iter::once(&piece.front).chain(&piece.back) {
        let printed: Vec<String> = face.runs().map(|run| run.text.text()).collect();
        // A description that repeats what is printed tells nothing more than the print.
        let mut alt = face.alt.clone();
        for text in printed.iter().filter(|text| !text.is_empty() && face.alt.contains(text.as_str())) {
            alt = alt.replace(text.as_str(), "");
        }
        words.beside.push(("description", alt));
        words.beside.extend(face.layers.iter().filter_map(|layer| match layer {
            Layer::Art(art) => Some(("description of a picture", art.alt.clone())),
            Layer::Text(_) => None,
        }));
        words.printed.extend(printed);
    }
    words
}
