//! Strips and bands: as long as the author says, joined over pages where they are longer than one.

use super::cards::shows;
use super::flags::letter_size;
use super::{Bench, ratio, told};
use crate::diag::{Hinted, Trouble};
use crate::face::draw::{Drawing, Pen};
use crate::face::{Face, Piece, Role};
use crate::limits;
use crate::units::{Mm, Rect, Size};

/// Height of the border along each long edge, the air within it included.
const EDGING: f64 = 5.0;
/// Least width of a letter's cell.
const CELL: f64 = 5.0;
/// A strip without a text shows a seal every so many heights.
const SEALS: f64 = 1.6;
/// Paper before the first letter and after the last.
const END: f64 = 8.0;

/// One page of a strip or band: from where to where it shows, and whether a tab follows.
struct Part {
    number: usize,
    of: usize,
    length: Mm,
    tab: Option<Mm>,
}

impl Bench<'_> {
    fn tab_mm(&self) -> Mm {
        Mm::new(self.spec.tab_width())
    }

    /// The empty face of a part: edging, marks, and the tab on its right with what is said there.
    fn part(&self, part: &Part, last: &[String]) -> Face {
        let (h, length) = (self.size.h, part.length);
        let mut face = Face::new(Size { w: length + part.tab.unwrap_or_default(), h }, String::new());
        self.edging(&mut face, part);
        if part.number > 1 {
            self.join_marks(&mut face, Mm::ZERO, h, false);
        }
        if let Some(tab) = part.tab {
            let rect = Rect { x: length, y: Mm::ZERO, w: tab, h };
            let (join, next, wide) = (part.number, part.number + 1, told(tab));
            let joins = [
                format!("Join {join}: glue part {next} over this tab, up to the line. Overlap {wide} mm."),
                format!("Glue part {next} over this tab: {wide} mm"),
                format!("Glue part {next} here"),
                format!("Part {next}"),
                next.to_string(),
            ];
            let closing = part.number == part.of;
            self.tab(&mut face, rect, if closing { last } else { &joins });
            self.lay_line(&mut face, length, h);
            self.join_marks(&mut face, length, h, true);
        }
        face
    }

    /// Lines along the long edges; across the outer ends as well, where the whole has ends.
    fn edging(&self, face: &mut Face, part: &Part) {
        let (h, length) = (self.size.h, part.length);
        let mut drawing = Drawing::new(face.size);
        for (inset, width, role) in [(2.2, 0.35, "ink"), (1.3, 0.15, "line")] {
            let pen = Pen::line(self.cx.colour(role), Mm::new(width));
            let inset = Mm::new(inset);
            let open = self.spec.form == crate::kit::Form::Band;
            let left = if part.number == 1 && !open { inset } else { Mm::ZERO };
            let right = if part.number == part.of && !open { length - inset } else { length };
            for y in [inset, h - inset] {
                drawing.line((left, y), (right, y), pen);
            }
            if !open {
                for (x, end) in [(left, part.number == 1), (right, part.number == part.of)] {
                    if end {
                        drawing.line((x, inset), (x, h - inset), pen);
                    }
                }
            }
        }
        face.art(drawing.svg(), Rect::of(face.size), String::new());
    }

    /// What a part's label says, in few words: it stands below a narrow piece. The tab itself says what to do.
    fn part_label(&self, part: &Part, whole: &str) -> String {
        let (number, of) = (part.number, part.of);
        let tab = part.tab.map_or_else(String::new, |tab| format!(", tab {} mm", told(tab)));
        if of == 1 {
            return format!("{whole}{tab}");
        }
        let whole = if number == of { format!(", {whole}") } else { String::new() };
        format!("part {number} of {of}{whole}{tab}")
    }
}

/// Longest that one page shows beside a tab.
fn longest(tab: Mm) -> Mm {
    Mm::new(limits::PROP_PAGE.1) - tab
}

fn too_many(parts: usize) -> Trouble {
    Trouble::new(format!("this would be joined from {parts} pages"))
        .hint(format!("make it shorter; at most {} pages are joined", limits::PROP_PARTS))
}

/// A strip of the given length, cut between letters.
pub(super) fn strip(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let (whole, h, tab) = (bench.size.w, bench.size.h, bench.tab_mm());
    let text = bench.plain(&bench.spec.text);
    let letters: Vec<char> = if text.is_empty() {
        let seals = (whole.get() / (h.get() * SEALS)).round().clamp(1.0, ratio(limits::PROP_LETTERS));
        std::iter::repeat_n(' ', (1..=limits::PROP_LETTERS).take_while(|n| ratio(*n) <= seals).count()).collect()
    } else {
        text.chars().collect()
    };
    let count = letters.len();
    if count > limits::PROP_LETTERS {
        return Err(Trouble::new(format!("a strip of {count} letters is too long to read"))
            .hint(format!("use at most {}, or two strips", limits::PROP_LETTERS)));
    }
    let cell = (whole - Mm::new(END * 2.0)) / ratio(count);
    if cell < Mm::new(CELL) {
        return Err(Trouble::new(format!("a strip of {} mm has no room for {count} letters", told(whole)))
            .hint(format!("make it at least {} mm long", told(Mm::new(CELL * ratio(count) + END * 2.0)))));
    }
    let most = longest(tab);
    // Cells on one page: the outer pages have an end besides.
    let room = ((most.get() - END) / cell.get()).floor();
    if room < 1.0 {
        return Err(Trouble::new(format!("a letter of this strip is {} mm wide, wider than a page", told(cell)))
            .hint("make the strip shorter, or write more on it"));
    }
    let one_page = whole <= Mm::new(limits::PROP_PAGE.1);
    let parts = (1..=count).find(|parts| one_page || ratio(count.div_ceil(*parts)) <= room).unwrap_or(count);
    if parts > limits::PROP_PARTS {
        return Err(too_many(parts));
    }
    let (rows, body) = (letters.as_slice(), Size { w: cell * 0.96, h: h - Mm::new(EDGING * 2.0) });
    let size = letter_size(rows, body);
    let most = (1..=count).take_while(|cells| ratio(*cells) <= room).last().unwrap_or(1);
    let shares = shares(rows, parts, if one_page { count } else { most });
    let of = shares.len();
    let mut rest = rows;
    let mut pieces = Vec::new();
    for (at, share) in shares.into_iter().enumerate() {
        let number = at + 1;
        let (letters, after) = rest.split_at(share.min(rest.len()));
        rest = after;
        let start = if number == 1 { Mm::new(END) } else { Mm::ZERO };
        let end = if number == of { Mm::new(END) } else { Mm::ZERO };
        let length = start + cell * ratio(letters.len()) + end;
        let part = Part { number, of, length, tab: (number < of).then_some(tab) };
        let mut face = bench.part(&part, &[]);
        let said: String = letters.iter().collect();
        face.alt =
            if text.is_empty() { bench.name.clone() } else { format!("{}, with the letters {said}", bench.name) };
        for (k, letter) in letters.iter().enumerate() {
            let rect = Rect { x: start + cell * ratio(k), y: Mm::new(EDGING), w: cell, h: body.h };
            if text.is_empty() {
                bench.seal(&mut face, rect.inset(h * 0.04), 0.0)?;
            } else if *letter != ' ' {
                face.text(bench.letter(rect, *letter, size));
            }
        }
        let name = if of == 1 { String::new() } else { number.to_string() };
        let said = if of == 1 { "long" } else { "when joined" };
        let label = bench.part_label(&part, &format!("{}\u{a0}mm {said}", told(whole)));
        pieces.push(bench.piece(&name, &label, face));
    }
    Ok(pieces)
}

/// How many letters each of so many pages shows, at most `most`: as alike as can be, parted between words where that
/// goes.
fn shares(letters: &[char], parts: usize, most: usize) -> Vec<usize> {
    let mut shares = Vec::new();
    let mut at = 0;
    for left in (1..=parts).rev() {
        let rest = letters.len() - at;
        let ideal = rest.div_ceil(left);
        // What follows must fit the pages that follow.
        let least = rest.saturating_sub(most * (left - 1)).max(1);
        let between = |share: &usize| {
            let cut = at + share;
            cut == letters.len() || letters.get(cut) == Some(&' ') || letters.get(cut - 1) == Some(&' ')
        };
        let off = |share: &usize| (!between(share), share.abs_diff(ideal), letters.get(at + share) == Some(&' '));
        let share = (least..=most.min(rest)).min_by_key(off).unwrap_or(ideal).min(rest);
        if share == 0 {
            break;
        }
        shares.push(share);
        at += share;
    }
    shares
}

/// A band of the given girth, with a tab that closes it. Its words stand on the first page, which goes in front.
pub(super) fn band(bench: &Bench<'_>) -> Hinted<Vec<Piece>> {
    let (girth, h, tab) = (bench.size.w, bench.size.h, bench.tab_mm());
    let most = longest(tab);
    let Some(of) = (1..=limits::PROP_PARTS).find(|parts| girth / ratio(*parts) <= most) else {
        return Err(too_many(limits::PROP_PARTS + 1));
    };
    let length = girth / ratio(of);
    let wide = told(tab);
    let closing = [
        format!("Lay it round, then glue its other end over this tab, up to the line. Overlap {wide} mm."),
        format!("Glue the other end over this tab: {wide} mm"),
        "Glue the other end here".to_owned(),
        "Glue here".to_owned(),
        "Glue".to_owned(),
    ];
    let mut pieces = Vec::new();
    for number in 1..=of {
        let part = Part { number, of, length, tab: Some(tab) };
        let mut face = bench.part(&part, &closing);
        let (text, top) = (bench.rich(&bench.spec.text), Mm::new(EDGING));
        let panel = Rect { x: length * 0.08, y: top, w: length * 0.84, h: h - top * 2.0 };
        if number > 1 || text.is_empty() {
            face.alt = format!("{}, part {number}", bench.name);
            bench.seal(&mut face, panel.inset(panel.h * 0.08), 0.0)?;
        } else {
            face.alt = shows(bench, &bench.spec.text);
            // Words in the middle half, a divider on either side of them.
            let words = Rect { x: length * 0.2, w: length * 0.6, ..panel };
            for x in [length * 0.03, length * 0.82] {
                bench.divider(&mut face, Rect { x, w: length * 0.15, ..panel })?;
            }
            face.text(bench.run(words, Role::Display, text, 48.0));
        }
        let name = if of == 1 { String::new() } else { number.to_string() };
        let label = bench.part_label(&part, &format!("{} mm round", told(girth)));
        pieces.push(bench.piece(&name, &label, face));
    }
    Ok(pieces)
}
