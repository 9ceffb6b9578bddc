//! Tabs by which the parts of a piece are joined, and the marks that show whether they lie right: as on the strips of
//! `party/printed`, whose pages are joined in the same way.

use super::draw::{Drawing, Pen};
use super::{Art, Face, Layer, Role, TextRun};
use crate::diag::Anchor;
use crate::script::Rich;
use crate::theme::{Colour, LARGE_PRINT};
use crate::units::{Mm, Rect, Size};

/// Colours of the lines and of what is said, of the hatching, and of the paper.
const LINE: Colour = Colour { r: 0x8C, g: 0x8C, b: 0x8C };
const SAID: Colour = Colour { r: 0x3C, g: 0x3C, b: 0x3C };
const HATCH: Colour = Colour { r: 0xD4, g: 0xD4, b: 0xD4 };
/// Half the height of a joining mark, and its distance from the edge.
const MARK: (Mm, Mm) = (Mm::new(1.8), Mm::new(6.5));
/// Width of a character in parts of its size, generously, to choose words that fit.
const CHARACTER: f64 = 0.62;
/// Air about what is said on a tab: at its ends, and beside it.
const AIR: (Mm, Mm) = (Mm::new(2.0), Mm::new(0.8));

/// How a part is joined to its neighbours.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Joint {
    /// The width of its tabs.
    pub tab: Mm,
    /// What may be said on the tab at its right, the longest first; without words there is none.
    pub right: Vec<String>,
    /// What may be said on the tab below it.
    pub below: Vec<String>,
    /// Whether it is laid on a tab with its left edge, and with its upper one.
    pub laid: (bool, bool),
}

impl Face {
    /// A part of a face with tabs outside its edges, hatched, with a line up to which the next part is laid, and halves
    /// of marks on either side that are whole when the parts lie right.
    #[must_use]
    pub fn joined(mut self, joint: &Joint) -> Self {
        let (w, h) = (self.size.w, self.size.h);
        let wide = |words: &[String]| if words.is_empty() { Mm::ZERO } else { joint.tab };
        let (right, below) = (wide(&joint.right), wide(&joint.below));
        self.size = Size { w: w + right, h: h + below };
        let mut drawing = Drawing::new(self.size);
        let mut said = Vec::new();
        let tabs = [
            (&joint.right, Rect { x: w, y: Mm::ZERO, w: right, h: h + below }, Rect { x: w, y: Mm::ZERO, w: right, h }),
            (&joint.below, Rect { x: Mm::ZERO, y: h, w, h: below }, Rect { x: Mm::ZERO, y: h, w, h: below }),
        ];
        for (words, ground, place) in tabs.into_iter().filter(|(words, ..)| !words.is_empty()) {
            // What of the piece reaches over the edge stands on the next part.
            drawing.rect(ground, Mm::ZERO, Pen::fill(Colour::WHITE));
            drawing.hatch(ground, HATCH);
            said.extend(saying(place, words));
        }
        let line = Pen::line(LINE, Mm::new(0.2));
        for (there, from, to) in [(right, (w, Mm::ZERO), (w, h + below)), (below, (Mm::ZERO, h), (w, h))]
            .map(|(tab, a, b)| (tab > Mm::ZERO, a, b))
        {
            if there {
                drawing.line(from, to, line);
            }
        }
        let fill = Pen::fill(LINE);
        let half = MARK.0;
        for (there, x, tip) in [(right > Mm::ZERO, w, w - half), (joint.laid.0, Mm::ZERO, half)] {
            for y in [MARK.1.min(h * 0.3), h - MARK.1.min(h * 0.3)].into_iter().filter(|_| there) {
                drawing.polygon(&[(x, y - half), (tip, y), (x, y + half)], fill);
            }
        }
        for (there, y, tip) in [(below > Mm::ZERO, h, h - half), (joint.laid.1, Mm::ZERO, half)] {
            for x in [MARK.1.min(w * 0.3), w - MARK.1.min(w * 0.3)].into_iter().filter(|_| there) {
                drawing.polygon(&[(x - half, y), (x, tip), (x + half, y)], fill);
            }
        }
        let rect = Rect::of(self.size);
        self.layers.push(Layer::Art(Art { svg: drawing.svg(), rect, turn: 0.0, alt: String::new() }));
        self.layers.extend(said);
        self
    }
}

/// The longest of these that fits, along the tab's longer side.
fn saying(tab: Rect, words: &[String]) -> Option<Layer> {
    let upright = tab.h > tab.w;
    let (long, short) = if upright { (tab.h, tab.w) } else { (tab.w, tab.h) };
    let (w, h) = (long - AIR.0, short - AIR.1);
    let character = LARGE_PRINT.to_mm() * CHARACTER;
    #[expect(clippy::cast_precision_loss, reason = "a sentence")]
    let saying = words.iter().find(|words| character * words.chars().count() as f64 <= w)?;
    let rect = Rect { x: tab.x + (tab.w - w) / 2.0, y: tab.y + (tab.h - h) / 2.0, w, h };
    let run = TextRun::new(rect, Role::Code, Rich::plain(saying.clone()), LARGE_PRINT, SAID, Anchor::Kit);
    Some(Layer::Text(run.at_least(LARGE_PRINT).turned(if upright { 270.0 } else { 0.0 })))
}
