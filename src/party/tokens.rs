use super::token_make::{Outside, drawn_dots, made};
use super::{LaidPuzzle, Party};
use crate::diag::{Anchor, Hinted, PuzzleField, Step};
use crate::face::{Audience, Face, Frame, Piece, Role, TextRun};
use crate::ids::PuzzleId;
use crate::kit::{Kit, Puzzle};
use crate::script::parse;
use crate::theme::Loaded;
use crate::units::Pt;

/// The hint tokens: three for each puzzle. A step without a text gives none; a check says so.
pub(super) fn tokens(party: &Party, kit: &Kit, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    let frame = frame(party, theme);
    let mut made = Vec::new();
    for (puzzle, laid) in kit.puzzles.iter().zip(&party.puzzles) {
        for step in Step::ALL {
            if laid.hints.step(step).trim().is_empty() {
                continue;
            }
            let at = Anchor::Puzzle(puzzle.id.clone(), PuzzleField::Hint(party.level, step));
            let piece = frame.clone().and_then(|frame| {
                let slip = Slip { puzzle, laid, step, at: &at };
                token(party, kit, theme, &frame, &slip)
            });
            made.push((at, piece));
        }
    }
    made
}

/// One step of one puzzle.
struct Slip<'a> {
    puzzle: &'a Puzzle,
    laid: &'a LaidPuzzle,
    step: Step,
    at: &'a Anchor,
}

/// The frame of all tokens, read once.
fn frame(party: &Party, theme: &Loaded) -> Hinted<Frame> {
    party.plain_dressing(theme, &PuzzleId::from_text("token")).frame("token")
}

fn token(party: &Party, kit: &Kit, theme: &Loaded, frame: &Frame, slip: &Slip<'_>) -> Hinted<Piece> {
    let Slip { puzzle, laid, step, at } = *slip;
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
    face.art(drawn_dots(dots, step, ink), dots, format!("step {} of 3", step.number()));
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
    made(piece, kit.making.tokens, frame, &cx, &Outside { mark, named: &named, step })
}
