use super::texts::{jar_name, label_name, rule};
use super::{Carrier, Direction, JAR, LABEL, Symbol, View};
use crate::diag::{Hinted, PuzzleField};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Align, Audience, Face, Piece, Role, TextRun, Valign, mm};
use crate::limits;
use crate::mechanics::words::caption;
use crate::mechanics::{Dressing, lid};
use crate::script::{Rich, Span, parse};
use crate::theme::Colour;
use crate::units::{Mm, Pt, Rect, Size};

/// What stays is black in every theme, as the markers are: another colour would tell what was printed.
const LASTING: Colour = Colour::BLACK;
/// Height of a jar's strip.
pub(super) const STRIP: Mm = Mm::new(26.0);
/// Height of a tile's row.
const ROW: Mm = Mm::new(18.0);
/// Longest piece of a strip, without its lap.
const LONGEST: f64 = limits::PRINTED_MM - 10.0;
/// What a strip's piece goes on beneath the next one.
pub(super) const LAP: Mm = Mm::new(8.0);
/// Room for the tile's arrow above the rows.
const HEAD: Mm = Mm::new(10.0);

pub(super) fn pieces(view: &View, cx: &Dressing<'_>) -> Hinted<Vec<Piece>> {
    let mut pieces = vec![label(view, cx)?];
    for host in [false, true] {
        if !host && !view.printed {
            if view.carrier == Carrier::Jar && view.start {
                pieces.push(start_tab(view, cx));
            }
            continue;
        }
        let faces = match view.carrier {
            Carrier::Jar => strip(view, cx, host),
            Carrier::Tile => vec![sheet(view, cx, host)],
        };
        let count = faces.len();
        for (index, face) in faces.into_iter().enumerate() {
            let (kind, word) = if host { ("template", "host’s template") } else { ("field", "lasting symbols") };
            let of = if count > 1 { format!(", piece {} of {count} from the left", index + 1) } else { String::new() };
            let mut piece = cx.piece(JAR, "", face);
            piece.label = caption(jar_name(view, cx), &format!("{word}{of}"));
            piece.id = format!("{}-{JAR}-{kind}-{}", cx.puzzle, index + 1);
            piece.measured = true;
            piece.on_a_thing = true;
            if host {
                piece.audience = Audience::Host;
            }
            pieces.push(piece);
        }
    }
    pieces.push(legend(view, cx));
    Ok(pieces)
}

/// For the host, beside the template: what its brackets mean.
fn legend(view: &View, cx: &Dressing<'_>) -> Piece {
    let jar = jar_name(view, cx);
    let plain = if view.printed { "is on the guests’ print already" } else { "you write in black permanent ink" };
    let begins = match (view.carrier, view.start) {
        (Carrier::Jar, true) => " The thick line is the start; letters stand upright, the lid above them.",
        (Carrier::Jar, false) => " Letters stand upright, the lid above them.",
        (Carrier::Tile, _) => "",
    };
    let words = format!(
        "How to use the template of {jar}. What stands without brackets {plain}. What stands in brackets you write in black \
         wipe-off ink, without the brackets, at its place, as large as the rest.{begins} Then put the template away."
    );
    let size = Size { w: mm(160.0), h: mm(30.0) };
    let mut face = Face::new(size, format!("for the host: how to use the template of {jar}"));
    let rect = Rect::of(size).inset(mm(2.0));
    let from = cx.at(PuzzleField::Setup);
    let run = TextRun::new(rect, Role::Text, Rich::plain(words), Pt::new(11.0), cx.colour("ink"), from);
    face.text(run.aligned(Align::Left, Valign::Top).at_least(Pt::new(9.0)));
    let mut piece = cx.piece(JAR, "", face);
    piece.label = caption(jar, "how to use the host’s template");
    piece.id = format!("{}-{JAR}-legend", cx.puzzle);
    piece.audience = Audience::Host;
    piece
}

/// The lid disc of a jar or the label of a tile: the author's words, then the rule.
fn label(view: &View, cx: &Dressing<'_>) -> Hinted<Piece> {
    let alt = format!("{}: where to start and which way to read", label_name(view, cx));
    let mut told = Rich::plain(rule(view));
    told.paragraphs.iter_mut().flat_map(|paragraph| &mut paragraph.spans).for_each(|span| span.strong = true);
    match view.carrier {
        Carrier::Jar => {
            let mut text = parse(&view.label_text);
            text.paragraphs.extend(told.paragraphs);
            let words = lid::Words { title: &parse(&view.label_title), text: &text, alt: &alt };
            let disc = lid::disc(cx, LABEL, view.lid_mm, &words)?;
            Ok(Piece { label: caption(label_name(view, cx), "lid disc"), ..disc })
        }
        Carrier::Tile => {
            let mut text = parse(&view.label_text);
            if let Some(last) = text.paragraphs.last_mut() {
                last.spans.push(Span { end_of_line: true, ..Span::default() });
                last.spans.extend(told.paragraphs.into_iter().flat_map(|paragraph| paragraph.spans));
            } else {
                text = told;
            }
            let face = cx.card("label", &view.label_title, &text, &alt)?;
            Ok(Piece { label: caption(label_name(view, cx), ""), ..cx.piece(LABEL, "", face) })
        }
    }
}

/// In how many pieces a jar's strip is printed.
pub(super) fn parts(view: &View) -> usize {
    ((view.around_mm / LONGEST).ceil() as usize).clamp(1, view.symbols.len().max(1))
}

/// The strip round a jar, in pieces that fit the paper. The last laps over the first.
fn strip(view: &View, cx: &Dressing<'_>, host: bool) -> Vec<Face> {
    let (count, pieces) = (view.symbols.len().max(1), parts(view));
    let (each, more) = (count / pieces, count % pieces);
    let mut faces = Vec::new();
    let mut first = 0;
    for index in 0..pieces {
        let here = each + usize::from(index < more);
        let left = mm(view.pitch_mm * first as f64);
        let right = mm(view.pitch_mm * (first + here) as f64);
        let size = Size { w: right - left + LAP, h: STRIP };
        let mut face = Face::new(size, alt(view, cx, host));
        let mut drawing = Drawing::new(size);
        // Where the next piece begins: the lap goes beneath it.
        let lap = size.w - LAP;
        if view.start {
            // The start is the seam; the mark stands on the side to which one reads.
            match view.direction {
                Direction::Leftwards if index + 1 == pieces => start_mark(&mut drawing, lap - mm(0.6), view),
                Direction::Rightwards | Direction::Unstated if index == 0 => {
                    start_mark(&mut drawing, mm(0.6), view);
                }
                _ => {}
            }
        }
        let thin = Pen::line(cx.colour("line"), mm(0.2)).dashed(mm(1.5), mm(1.5));
        drawing.line((lap, mm(0.5)), (lap, STRIP - mm(0.5)), thin);
        face.art(drawing.svg(), Rect::of(size), String::new());
        for symbol in view.symbols.iter().filter(|s| mm(s.at) >= left && mm(s.at) < right) {
            let middle = mm(symbol.at) - left;
            let half = mm(view.pitch_mm / 2.0 - 0.5);
            let rect = Rect { x: middle - half, y: mm(5.5), w: half * 2.0, h: STRIP - mm(7.5) };
            write(&mut face, symbol, rect, host, cx);
        }
        faces.push(face);
        first += here;
    }
    faces
}

/// The sheet of a tile, row by row.
fn sheet(view: &View, cx: &Dressing<'_>, host: bool) -> Face {
    let rows = view.symbols.iter().map(|symbol| symbol.row).max().unwrap_or(0) + 1;
    let size = Size { w: mm(view.around_mm), h: HEAD + ROW * f64::from(rows) };
    let mut face = Face::new(size, alt(view, cx, host));
    if view.start {
        let mut drawing = Drawing::new(size);
        let (x, ink) = (size.w / 2.0, cx.colour("ink"));
        drawing.polygon(&[(x, mm(2.0)), (x + mm(3.5), mm(8.0)), (x - mm(3.5), mm(8.0))], Pen::fill(ink));
        face.art(drawing.svg(), Rect::of(size), "an arrow that points up");
    }
    for symbol in &view.symbols {
        let half = mm(view.pitch_mm / 2.0 - 0.5);
        let y = HEAD + ROW * f64::from(symbol.row) + mm(1.0);
        let rect = Rect { x: mm(symbol.at) - half, y, w: half * 2.0, h: ROW - mm(2.0) };
        write(&mut face, symbol, rect, host, cx);
    }
    face
}

/// On the guests' piece only what stays; on the host's also, in brackets and the second colour, what the host adds.
fn write(face: &mut Face, symbol: &Symbol, rect: Rect, host: bool, cx: &Dressing<'_>) {
    if !host && !symbol.lasting {
        return;
    }
    let (words, ink) = if symbol.lasting {
        (symbol.text.to_string(), LASTING)
    } else {
        (format!("({})", symbol.text), cx.colour("accent"))
    };
    let run = TextRun::new(rect, Role::Hand, Rich::plain(words), Pt::new(30.0), ink, cx.at(PuzzleField::Setup));
    face.text(run.at_least(Pt::new(12.0)));
}

fn alt(view: &View, cx: &Dressing<'_>, host: bool) -> String {
    let jar = jar_name(view, cx);
    if host {
        format!("template for {jar}: what stays, and in brackets what is written in wipe-off ink")
    } else {
        format!("symbols for {jar}")
    }
}

/// The start mark: a thick line, with an arrow at its top that shows the way where it is stated.
fn start_mark(drawing: &mut Drawing, x: Mm, view: &View) {
    let ink = LASTING;
    drawing.line((x, mm(2.0)), (x, STRIP - mm(2.0)), Pen::line(ink, mm(1.1)));
    let way = match view.direction {
        Direction::Rightwards => 1.0,
        Direction::Leftwards => -1.0,
        Direction::Unstated => return,
    };
    let (y, neck, tip) = (mm(3.0), x + mm(6.0 * way), x + mm(10.0 * way));
    drawing.line((x, y), (neck, y), Pen::line(ink, mm(0.7)));
    drawing.polygon(&[(tip, y), (neck, y - mm(1.8)), (neck, y + mm(1.8))], Pen::fill(ink));
}

/// The start mark on a tab of its own, for a jar that the host writes on.
fn start_tab(view: &View, cx: &Dressing<'_>) -> Piece {
    let size = Size { w: mm(26.0), h: STRIP };
    let mut face = Face::new(size, "the start mark for the jar");
    let mut drawing = Drawing::new(size);
    start_mark(&mut drawing, size.w / 2.0, view);
    face.art(drawing.svg(), Rect::of(size), "a start mark");
    let mut piece = cx.piece(JAR, "", face);
    piece.label = caption(jar_name(view, cx), "start mark");
    piece.id = format!("{}-{JAR}-start", cx.puzzle);
    piece
}
