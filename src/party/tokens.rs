use rayon::prelude::*;

use super::token_make::{Outside, TokenArt, made};
use super::{LaidPuzzle, Party};
use crate::diag::{Anchor, Hinted, PuzzleField, Step};
use crate::face::{Audience, Face, Frame, Piece, Role, TextRun};
use crate::ids::PuzzleId;
use crate::kit::{Kit, Puzzle};
use crate::script::parse;
use crate::theme::Loaded;
use crate::units::{Mm, Pt};

/// The hint tokens: three for each puzzle. A step without a text gives none; a check says so.
pub(super) fn tokens(party: &Party, kit: &Kit, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    let art = art(party, theme);
    let factor = art.as_ref().map_or(1.0, |art| growth(longest(&party.puzzles), room(&art.frame)));
    let ladder = |(puzzle, laid): (&Puzzle, &LaidPuzzle)| {
        let steps = Step::ALL.into_iter().filter(|step| !laid.hints.step(*step).trim().is_empty());
        let one = |step| {
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Hint(party.level, step));
            let slip = Slip { puzzle, laid, step, at: &at };
            let piece = art.as_ref().map_err(Clone::clone).and_then(|art| token(party, kit, theme, art, &slip));
            (at, piece.map(|piece| if factor > 1.0 { larger(&piece, factor) } else { piece }))
        };
        steps.map(one).collect::<Vec<_>>()
    };
    kit.puzzles.par_iter().zip(&party.puzzles).flat_map_iter(ladder).collect()
}

/// One step of one puzzle.
struct Slip<'a> {
    puzzle: &'a Puzzle,
    laid: &'a LaidPuzzle,
    step: Step,
    at: &'a Anchor,
}

/// What all tokens show alike.
fn art(party: &Party, theme: &Loaded) -> Hinted<TokenArt> {
    let id = PuzzleId::from_text("token");
    let cx = party.plain_dressing(theme, &id);
    Ok(TokenArt::new(cx.frame("token")?, cx.colour("ink")))
}

fn token(party: &Party, kit: &Kit, theme: &Loaded, art: &TokenArt, slip: &Slip<'_>) -> Hinted<Piece> {
    let Slip { puzzle, laid, step, at } = *slip;
    let frame = art.frame.as_ref();
    let lock = party.positions.lock(kit, &puzzle.opens);
    let mark = lock.map_or("", |lock| lock.mark.as_str());
    let mark = if theme.symbol(mark).is_some() { mark } else { "" };
    let mut cx = party.plain_dressing(theme, &puzzle.id);
    cx.mark = mark;
    let text = laid.hints.step(step);
    let named = match (mark, lock) {
        ("", Some(lock)) => party.say(&lock.name),
        ("", None) => puzzle.opens.to_string(),
        (mark, _) => mark.replace('-', " "),
    };
    let mut face = Face::on(frame, format!("Hint {} of 3 for the mark {named}. {text}", step.number()));
    let body = cx.slot(frame, "token", "body")?;
    let ink = cx.colour("ink");
    face.text(
        TextRun::new(body, Role::Text, parse(text), Pt::new(13.0), ink, at.clone())
            .within(frame.shapes.get("body").cloned()),
    );
    cx.draw_mark(&mut face, frame)?;
    let dots = cx.slot(frame, "token", "dots")?;
    face.art(art.dots(step), dots, format!("step {} of 3", step.number()));
    let open = usize::from(kit.levels.of(party.level).open_steps) >= step.number();
    let open = if open { ", face up from the start" } else { "" };
    let piece = Piece {
        id: format!("token-{}-{}", puzzle.id, step.word()),
        part: step.word().to_owned(),
        label: format!("Token: {named} {}{open}", "\u{2022}".repeat(step.number())),
        audience: Audience::Hints,
        front: face,
        back: None,
        copies: 1,
        measured: false,
        stock: crate::face::Stock::Card,
        on_a_thing: false,
        large: false,
        group: "tokens".into(),
    };
    made(piece, kit.making.tokens, art, &cx, &Outside { mark, named: &named, step })
}

/// The most letters of a hint. All tokens are as large as the longest asks for: of several sizes the larger ones would tell
/// from afar which hint says most, and they would stand in ragged rows.
fn longest(puzzles: &[LaidPuzzle]) -> usize {
    let texts = puzzles.iter().flat_map(|laid| Step::ALL.map(|step| laid.hints.step(step)));
    texts.map(|text| parse(text).text().chars().count()).max().unwrap_or(0)
}

/// Square millimetres that a frame gives to the words.
fn room(frame: &Frame) -> f64 {
    let whole = || frame.slot("body").map_or(0.0, |body| body.w.get() * body.h.get());
    frame.shapes.get("body").map_or_else(whole, |shape| area(shape))
}

/// Square millimetres that a letter takes at one point, line spacing and ragged ends counted in: measured on the long
/// hints of the carried kits, in all their themes.
const LETTER: f64 = 0.073;
/// The size that no token's words should stay below, in points, where a larger token helps.
const COMFORT: f64 = 10.8;
/// How much larger than the frame tokens with a long text may be.
const MOST: f64 = 1.25;

/// How much larger tokens must be so that no words are small, in twentieths.
fn growth(letters: usize, room: f64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "letters of a hint")]
    let needed = letters as f64 * LETTER * COMFORT * COMFORT;
    ((needed / room.max(1.0)).sqrt() * 20.0).ceil().clamp(20.0, MOST * 20.0) / 20.0
}

/// The area within corners (the shoelace formula).
fn area(corners: &[(Mm, Mm)]) -> f64 {
    let next = corners.iter().cycle().skip(1);
    let twice: f64 = corners.iter().zip(next).map(|(a, b)| a.0.get() * b.1.get() - b.0.get() * a.1.get()).sum();
    twice.abs() / 2.0
}

fn larger(piece: &Piece, factor: f64) -> Piece {
    let least = Pt::new(9.0);
    Piece {
        front: piece.front.grown(factor, least),
        back: piece.back.as_ref().map(|back| back.grown(factor, least)),
        ..piece.clone()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tokens_grow_with_the_longest_text_and_not_beyond_bounds() {
        let square = [(0.0, 0.0), (40.0, 0.0), (40.0, 35.0), (0.0, 35.0)].map(|(x, y)| (Mm::new(x), Mm::new(y)));
        let room = area(&square);
        assert!((room - 1400.0).abs() < 1e-9);
        let grown: Vec<f64> = [0, 60, 160, 210, 250, 2_000].iter().map(|letters| growth(*letters, room)).collect();
        assert_eq!(grown, [1.0, 1.0, 1.0, 1.15, 1.25, 1.25]);
        assert!(growth(100, 0.0) <= MOST);
    }
}
