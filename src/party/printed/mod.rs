//! The props that a kit prints: banners, strips, tent cards, envelopes, bands, tags, labels, covers, discs, each at the
//! size that the author gives.

mod cards;
mod cover;
mod flags;
mod folded;
mod ground;
mod joined;
mod tab;

pub(super) use flags::shaped;
pub(super) use tab::hole;

use super::Party;
use crate::diag::{Anchor, Hinted, Trouble};
use crate::face::{Audience, Face, Piece, Stock};
use crate::ids::PuzzleId;
use crate::kit::{Form, Kit, Printed, Prop};
use crate::limits;
use crate::mechanics::Dressing;
use crate::script::{Rich, capital, parse};
use crate::theme::Loaded;
use crate::units::{Mm, Size};

/// The pieces of all printed props.
pub(super) fn printed(party: &Party, kit: &Kit, theme: &Loaded) -> Vec<(Anchor, Hinted<Piece>)> {
    let mut made = Vec::new();
    for prop in &kit.props {
        let Some(spec) = &prop.printed else { continue };
        let at = Anchor::Prop(prop.id.clone());
        match pieces(party, kit, theme, prop, spec) {
            Ok(pieces) => made.extend(pieces.into_iter().map(|piece| (at.clone(), Ok(piece)))),
            Err(trouble) => made.push((at, Err(trouble))),
        }
    }
    made
}

fn pieces(party: &Party, kit: &Kit, theme: &Loaded, prop: &Prop, spec: &Printed) -> Hinted<Vec<Piece>> {
    sound(spec)?;
    let id = PuzzleId::from_text(prop.id.as_str());
    let bench = Bench {
        cx: party.plain_dressing(theme, &id),
        party,
        spec,
        id: prop.id.as_str(),
        name: capital(&party.say(kit.prop_name(prop))),
        marks: marks(party, kit, theme, prop),
        at: Anchor::Prop(prop.id.clone()),
        size: Size::mm(spec.size.0, spec.size.1),
    };
    let pieces = match spec.form {
        Form::Banner => flags::banner(&bench),
        Form::Strip => joined::strip(&bench),
        Form::Band => joined::band(&bench),
        Form::Tent => folded::tents(&bench),
        Form::Envelope => folded::envelope(&bench),
        Form::Tag => cards::tags(&bench),
        Form::Label => cards::labels(&bench),
        Form::Disc => cards::discs(&bench),
        Form::Cover => cover::cover(&bench),
    }?;
    pieces.iter().try_for_each(|piece| on_paper(spec.form, piece))?;
    Ok(pieces)
}

/// The marks of the locks that shut the box that a prop is; none where it is no box.
fn marks<'a>(party: &Party, kit: &'a Kit, theme: &Loaded, prop: &Prop) -> Vec<&'a str> {
    let locks = kit.as_box(prop).into_iter().flat_map(|item| &item.locks);
    let marks = locks.filter_map(|id| party.positions.lock(kit, id)).map(|lock| lock.mark.as_str());
    marks.filter(|mark| theme.symbol(mark).is_some()).collect()
}

/// Holds that a piece fits a sheet of either paper, turned or not.
fn on_paper(form: Form, piece: &Piece) -> Hinted<()> {
    const SLACK: f64 = 1e-6;
    let (w, h) = (piece.front.size.w.get(), piece.front.size.h.get());
    let (across, down) = limits::PROP_PAGE;
    let takes = |w: f64, h: f64| w <= across + SLACK && h <= down + SLACK;
    if takes(w, h) || takes(h, w) {
        return Ok(());
    }
    let mend = match form {
        Form::Banner => "make the flags smaller",
        Form::Strip | Form::Band => "make it lower: it is joined only lengthwise",
        Form::Tent => "make the sides smaller: both stand on one sheet, one above the other",
        Form::Envelope => "let it take something smaller, or fold what goes in once more",
        Form::Tag | Form::Disc => "make it smaller",
        Form::Label => "make it smaller, or two labels side by side",
        Form::Cover => "make the flaps narrower, or wrap the book in plain paper and print a label for it",
    };
    Err(Trouble::new(format!(
        "\"{}\" is {} × {} mm flat, and a sheet takes {across} × {down} mm, turned or not",
        piece.label,
        told(piece.front.size.w),
        told(piece.front.size.h)
    ))
    .hint(mend))
}

/// Holds that every number lies within its bounds.
fn sound(spec: &Printed) -> Hinted<()> {
    let within = |what: &str, value: f64, (least, most): (f64, f64)| {
        if (least..=most).contains(&value) {
            return Ok(());
        }
        Err(Trouble::new(format!("the {what} of this {} is {value} mm", spec.form.word()))
            .hint(format!("give it between {least} and {most} millimetres")))
    };
    within("width", spec.size.0, limits::PROP_MM)?;
    within("height", spec.size.1, limits::PROP_MM)?;
    if spec.form.is_glued() {
        within("glued tab", spec.tab_width(), limits::PROP_TAB)?;
    }
    if let Some(hole) = spec.holes() {
        within("hole", hole, limits::PROP_HOLE)?;
    }
    if spec.form == Form::Cover {
        within("spine", spec.spine, (0.0, limits::PROP_PAGE.0))?;
        within("flaps", spec.flaps, (0.0, limits::PROP_PAGE.0))?;
    }
    if spec.texts().count() > limits::PROP_TEXTS {
        return Err(Trouble::new(format!("this {} has {} texts", spec.form.word(), spec.texts().count()))
            .hint(format!("give at most {}; make another prop for the rest", limits::PROP_TEXTS)));
    }
    if spec.copies == 0 || spec.copies > limits::PROP_COPIES {
        return Err(Trouble::new(format!("{} copies of this {} are asked for", spec.copies, spec.form.word()))
            .hint(format!("ask for 1 to {}", limits::PROP_COPIES)));
    }
    Ok(())
}

/// What a printed prop is made with.
struct Bench<'a> {
    cx: Dressing<'a>,
    party: &'a Party,
    spec: &'a Printed,
    id: &'a str,
    /// The prop's name, capital first.
    name: String,
    /// The marks of the locks of the box that it is.
    marks: Vec<&'a str>,
    at: Anchor,
    size: Size,
}

impl Bench<'_> {
    /// A text of the author's, slots filled.
    fn rich(&self, text: &str) -> Rich {
        parse(&self.party.say(text))
    }

    /// The same without markup, in one line.
    fn plain(&self, text: &str) -> String {
        let text = self.rich(text).text();
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// A piece: `part` is empty for the only one; `label` says what to do with it.
    fn piece(&self, part: &str, label: &str, front: Face) -> Piece {
        let joint = if part.is_empty() { "" } else { "-" };
        let stop = if label.is_empty() { "" } else { ": " };
        Piece {
            id: format!("prop-{}{joint}{part}", self.id),
            part: part.to_owned(),
            label: format!("{}{stop}{label}", self.name),
            audience: Audience::Players,
            front,
            back: None,
            copies: self.spec.copies,
            measured: true,
            stock: if self.spec.form.is_thin() { Stock::Plain } else { Stock::Card },
            on_a_thing: matches!(self.spec.form, Form::Band | Form::Label | Form::Disc | Form::Cover | Form::Envelope),
            large: false,
            group: format!("prop-{}", self.id),
        }
    }
}

/// As a part of a length; the counts here are small.
#[expect(clippy::cast_precision_loss, reason = "a handful of letters, flags or pages")]
const fn ratio(count: usize) -> f64 {
    count as f64
}

/// A length in words, to a tenth.
fn told(length: Mm) -> String {
    format!("{:.1}", length.get()).trim_end_matches(".0").to_owned()
}
