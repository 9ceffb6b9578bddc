//! Which pieces a listing shows, and how those look that it must not show.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::secrets::Secrets;
use crate::checks::LevelProof;
use crate::diag::{Anchor, Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Audience, Face, Frame, Layer, Outline, Piece, Role, TextRun, clean_svg};
use crate::kit::{Kit, Place, Puzzle};
use crate::mechanics;
use crate::party::{Party, words_of};
use crate::script::Rich;
use crate::theme::Loaded;
use crate::units::{Mm, Pt, Rect, Size};

/// Like pieces, such as tags or flags, that are shown, one behind another; more would fill the page with one thing.
const ALIKE: usize = 3;
/// Largest seal on a veiled piece, in millimetres.
const SEAL: f64 = 56.0;
/// What a veiled piece is called to those who do not see it, and what stands on it where the theme has no seal.
const WORDS: &str = "Kept for the party";

/// A piece as a listing shows it.
#[derive(Clone, Debug)]
pub(super) struct Shown {
    /// The piece's id.
    pub(super) piece: String,
    /// What it is called.
    pub(super) label: String,
    /// The front, or what stands in its place.
    pub(super) face: Face,
    /// Whether the front is kept back.
    pub(super) veiled: bool,
    /// What it is shown together with: pieces of one kind have the same.
    pub(super) kind: String,
    /// How many pieces of that kind the kit has.
    pub(super) alike: usize,
}

/// The pieces of a listing, the letter first.
///
/// Shown as they are: the letter, smaller texts and labels that lie open, and of each puzzle of several parts one, if the
/// puzzle cannot be read from that part alone. All other pieces for guests are veiled, and of the hint tokens one. The
/// closing card and the host's pieces are left out. Whatever holds an answer or a hint in its words is veiled, and left
/// out if its name does.
///
/// # Errors
/// When the theme's art cannot be read.
pub(super) fn shown(
    kit: &Kit,
    theme: &Loaded,
    level: &LevelProof,
    letter: &Piece,
    secrets: &Secrets,
) -> Hinted<Vec<Shown>> {
    let party = &level.party;
    let veil = Veil::new(theme, party)?;
    let open = open_parts(kit, theme, level, secrets);
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    let mut found: Vec<Shown> = Vec::new();
    for piece in std::iter::once(letter).chain(&party.pieces) {
        let last = kit.finish.card.as_str() == piece.id;
        if piece.audience == Audience::Host || last || secrets.tells(&piece.label) {
            continue;
        }
        let puzzle = kit.puzzles.iter().find(|puzzle| puzzle.id.as_str() == piece.group);
        let kind = kind(piece, puzzle.is_some());
        let alike = seen.entry(kind.clone()).or_default();
        *alike += 1;
        if *alike > if piece.audience == Audience::Hints { 1 } else { ALIKE } {
            continue;
        }
        let bare = match puzzle {
            _ if piece.audience != Audience::Players => false,
            Some(_) => open.contains(&(piece.group.as_str(), piece.part.as_str())),
            None => !in_a_box(kit, piece),
        };
        let bare = bare && clean(piece, secrets);
        let face = flat(if bare { piece.front.clone() } else { veil.over(piece) });
        found.push(Shown { piece: piece.id.clone(), label: label(piece), face, veiled: !bare, kind, alike: 1 });
    }
    for piece in &mut found {
        piece.alike = seen.get(&piece.kind).copied().unwrap_or(1);
    }
    Ok(found)
}

/// A tent card without its blank half, as it is seen when it stands; an envelope as it is seen when it is glued.
fn flat(mut face: Face) -> Face {
    if let Some(front) = folded_about(&face) {
        face.layers.retain_mut(|layer| {
            let rect = match layer {
                Layer::Art(art) => &mut art.rect,
                Layer::Text(run) => &mut run.rect,
            };
            let seen = front.inset(Mm::new(-0.5)).holds(*rect);
            *rect = rect.moved(Mm::ZERO - front.x, Mm::ZERO - front.y);
            seen
        });
        return Face { size: Size { w: front.w, h: front.h }, outline: Outline::Rect, folds: Vec::new(), ..face };
    }
    let top = face.layers.iter().map(|layer| match layer {
        Layer::Art(art) => art.rect.y,
        Layer::Text(run) => run.rect.y,
    });
    let top = top.fold(face.size.h, Mm::min);
    let fold = face.folds.iter().map(|((_, y), _)| *y).find(|y| top >= *y - Mm::new(0.01) && *y < face.size.h);
    if let Some(fold) = fold {
        for layer in &mut face.layers {
            let rect = match layer {
                Layer::Art(art) => &mut art.rect,
                Layer::Text(run) => &mut run.rect,
            };
            *rect = rect.moved(Mm::ZERO, Mm::ZERO - fold);
        }
        face.size.h = face.size.h - fold;
    }
    face.folds.clear();
    face
}

/// The rectangle between two upright folds and two across, about which everything else is folded back.
fn folded_about(face: &Face) -> Option<Rect> {
    let near = |a: Mm, b: Mm| (a - b).get().abs() < 0.01;
    let span = |values: Vec<Mm>| {
        let (least, most) = (values.iter().copied().reduce(Mm::min)?, values.iter().copied().reduce(Mm::max)?);
        (!near(least, most)).then_some((least, most))
    };
    let (x, right) = span(face.folds.iter().filter(|(a, b)| near(a.0, b.0)).map(|(a, _)| a.0).collect())?;
    let (y, bottom) = span(face.folds.iter().filter(|(a, b)| near(a.1, b.1)).map(|(a, _)| a.1).collect())?;
    Some(Rect { x, y, w: right - x, h: bottom - y })
}

/// What a piece is one of: the part of its puzzle, the prop, the notes or labels that look alike.
fn kind(piece: &Piece, of_puzzle: bool) -> String {
    let group = &piece.group;
    match piece.audience {
        Audience::Hints => "tokens".to_owned(),
        _ if of_puzzle => format!("{group}/{}", piece.part),
        _ if group.starts_with("prop-") => group.clone(),
        _ => format!("{group}/{}", called(piece)),
    }
}

/// The first words of a label, which tell what it is: "Note", "The banner".
fn called(piece: &Piece) -> &str {
    let end = piece.label.find([':', ',']).unwrap_or(piece.label.len());
    piece.label.get(..end).unwrap_or(&piece.label).trim()
}

/// What a piece is called in a listing: a hint token stands for all of them.
fn label(piece: &Piece) -> String {
    if piece.audience == Audience::Hints { "Hint tokens".to_owned() } else { called(piece).to_owned() }
}

/// Whether a piece is a smaller text that guests find in a box.
fn in_a_box(kit: &Kit, piece: &Piece) -> bool {
    kit.notes.iter().any(|note| note.id.as_str() == piece.id && matches!(note.place, Place::Box(_)))
}

/// Whether no word that goes with the piece is secret.
fn clean(piece: &Piece, secrets: &Secrets) -> bool {
    let words = words_of(piece);
    let face = piece.front.runs().map(|run| run.text.text()).collect::<Vec<_>>().join("\n");
    !secrets.tells(&face)
        && !secrets.tells(&piece.front.alt)
        && words.beside.iter().all(|(what, text)| *what == "file name" || !secrets.tells(text))
}

/// Of each puzzle of several printed parts the one that is shown, by puzzle and part: the largest from which alone
/// nobody reads the answer.
fn open_parts<'a>(
    kit: &'a Kit,
    theme: &Loaded,
    level: &'a LevelProof,
    secrets: &Secrets,
) -> BTreeSet<(&'a str, &'a str)> {
    let mut open = BTreeSet::new();
    for puzzle in &kit.puzzles {
        let id = puzzle.id.as_str();
        let Ok(mechanic) = mechanics::find(&puzzle.mechanic) else { continue };
        let pieces = |part: &str| {
            let part = part.to_owned();
            level
                .party
                .pieces
                .iter()
                .filter(move |piece| piece.group == id && piece.part == part && piece.audience == Audience::Players)
        };
        let mut parts: Vec<&str> = mechanic.meta().parts.iter().map(|part| part.key).collect();
        parts.retain(|part| pieces(part).next().is_some());
        if parts.len() < 2 {
            continue;
        }
        let area = |part: &str| {
            pieces(part).map(|piece| piece.front.size.w.get() * piece.front.size.h.get()).fold(0.0, f64::max)
        };
        parts.sort_by(|a, b| area(b).total_cmp(&area(a)));
        let part = parts.into_iter().find(|part| {
            pieces(part).all(|piece| clean(piece, secrets)) && !gives_away(kit, theme, level, puzzle, part)
        });
        open.extend(part.map(|part| (id, part)));
    }
    open
}

/// Whether the answer is among what can be read from one part of a puzzle alone, with all that the host is told. Where
/// the paper cannot tell, it counts as given away.
fn gives_away(kit: &Kit, theme: &Loaded, level: &LevelProof, puzzle: &Puzzle, part: &str) -> bool {
    let sides = level.set.iter().filter(|set| set.paper.is_none()).flat_map(|set| &set.printed);
    let mine = |id: &str| level.party.piece(id).is_some_and(|piece| piece.group == puzzle.id.as_str());
    let sides: Vec<_> = sides.filter(|side| side.part == part && mine(&side.piece)).cloned().collect();
    if sides.is_empty() {
        return true;
    }
    match level.party.reread(kit, theme, puzzle, sides) {
        None => true,
        Some(Err(_)) => false,
        Some(Ok(found)) => {
            let answer = level.party.puzzle(&puzzle.id).map(|laid| laid.answer.to_lowercase()).unwrap_or_default();
            found.more || found.unproven || found.list.iter().any(|reading| reading.answer.to_lowercase() == answer)
        }
    }
}

/// What is drawn in the place of a piece that is kept back: the theme's frame on which it stands, and a plain ground.
struct Veil<'a> {
    party: &'a Party,
    /// The art of the theme's frames: known pictures that tell nothing.
    frames: BTreeSet<Arc<str>>,
    /// The theme's seal with its shape, if it has one.
    seal: Option<(Arc<str>, Size)>,
}

impl<'a> Veil<'a> {
    fn new(theme: &Loaded, party: &'a Party) -> Hinted<Self> {
        let mut frames = BTreeSet::new();
        for name in theme.theme.frames.keys() {
            if let Some(svg) = theme.frame(name) {
                frames.insert(Frame::read(svg, &party.palette).map_err(|t| t.at(format!("frame {name}")))?.svg);
            }
        }
        let seal = theme.ornament("seal").map(|svg| {
            let svg = clean_svg(svg, &party.palette)?;
            Ok((Arc::clone(&svg), Frame::read(&svg, &party.palette)?.size))
        });
        let seal = seal.transpose().map_err(|trouble: Trouble| trouble.at("ornament seal"))?;
        Ok(Self { party, frames, seal })
    }

    /// The piece without anything but its shape, its frame and a seal, or a word where the theme has none.
    fn over(&self, piece: &Piece) -> Face {
        let front = &piece.front;
        let mut face = Face { layers: Vec::new(), alt: WORDS.to_owned(), ..front.clone() };
        let frame = front.layers.iter().find_map(|layer| match layer {
            Layer::Art(art) if self.frames.contains(&art.svg) => Some(art.clone()),
            _ => None,
        });
        let stands = frame.as_ref().map_or(Rect::of(front.size), |art| art.rect);
        if let Some(mut art) = frame {
            art.alt = String::new();
            face.layers.push(Layer::Art(art));
        }
        if let Some((svg, size)) = &self.seal {
            let part = if matches!(front.outline, Outline::Rect) { 0.5 } else { 0.4 };
            let side = Mm::new((stands.w.min(stands.h).get() * part).min(SEAL));
            let scale = side.get() / size.w.max(size.h).get();
            let (w, h) = (size.w * scale, size.h * scale);
            let rect = Rect { x: stands.x + (stands.w - w) / 2.0, y: stands.y + (stands.h - h) / 2.0, w, h };
            face.art(Arc::clone(svg), rect, "");
            return face;
        }
        // The middle, in every outline: a disc and a token are narrow at their ends.
        let (across, down) = match front.outline {
            Outline::Rect => (0.74, 0.6),
            Outline::Round | Outline::Path(_) => (0.62, 0.34),
        };
        let (w, h) = (stands.w * across, (stands.h * down).min(stands.w * 0.7));
        let band = Rect { x: stands.x + (stands.w - w) / 2.0, y: stands.y + (stands.h - h) / 2.0, w, h };
        face.art(self.band(Size { w, h }), band, "");
        let colour = |role: &str| self.party.palette.get(role);
        let words = TextRun::new(
            band.inset(Mm::new(1.5)),
            Role::Text,
            Rich::plain(WORDS),
            Pt::new((w.get() * 0.42).clamp(9.0, 60.0)),
            colour("ink"),
            Anchor::Kit,
        );
        face.text(words.at_least(Pt::new(5.0)));
        face
    }

    fn band(&self, size: Size) -> Arc<str> {
        let mut drawing = Drawing::new(size);
        let rect = Rect::of(size).inset(Mm::new(0.2));
        let round = Mm::new(size.w.get().min(size.h.get()) * 0.14);
        drawing.rect(rect, round, Pen::fill(self.party.palette.get("soft")));
        drawing.rect(rect, round, Pen::line(self.party.palette.get("line"), Mm::new(0.3)));
        drawing.svg()
    }
}
