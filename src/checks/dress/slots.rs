use super::names::{meant, off_size, words};
use crate::checks::Draft;
use crate::diag::{Anchor, Severity};
use crate::face::{Frame, usual_frames};
use crate::theme::{FRAMES, FrameInfo, Loaded, MORE_FRAMES, Palette, ROLES, unknown_roles};
use crate::units::{Rect, Size};

/// The least part of the usual width or height that a slot may have: texts of the program are written for the usual ones,
/// and are set a little smaller where they must be (our choice).
const LEAST: f64 = 0.85;
/// By how much two slots may overlap, in millimetres: a drawing program rounds.
const OVERLAP: f64 = 0.3;

/// Slots where no text can be set: outside the picture, over another, too small, or of a name that means nothing.
pub fn misplaced(theme: &Loaded, palette: &Palette) -> Vec<Draft> {
    let off = off_size(theme, palette);
    let mut drafts = Vec::new();
    for info in FRAMES.iter().chain(MORE_FRAMES) {
        let Some(frame) = theme.frame(info.name).and_then(|svg| Frame::read(svg, palette).ok()) else { continue };
        outside(info, &frame, &mut drafts);
        overlapping(info, &frame, &mut drafts);
        unknown(info, &frame, &mut drafts);
        // A frame of the wrong size has slots of the wrong size, and is told already.
        if !off.iter().any(|(name, ..)| name == info.name) {
            small(info, &frame, &mut drafts);
        }
    }
    drafts
}

fn outside(info: &FrameInfo, frame: &Frame, drafts: &mut Vec<Draft>) {
    for name in info.all_slots() {
        let Some(rect) = frame.slot(name).filter(|rect| !Rect::of(frame.size).holds(*rect)) else { continue };
        let message = format!(
            "the slot `{name}` of the frame `{}` leaves the picture: it stands {}, and the picture is {}",
            info.name,
            place(rect),
            words(frame.size)
        );
        let draft = Draft::new(Anchor::Theme, message).why("what stands in the slot is cut off with the card's edge");
        drafts.push(
            draft.help("move it inside; a slot that was scaled or turned in a group may stand elsewhere than it seems"),
        );
    }
}

/// A place in words: "12.3 from the left and 7 from the top, 80 × 30 mm".
fn place(rect: Rect) -> String {
    let number = |value: f64| format!("{value:.1}").trim_end_matches(".0").to_owned();
    let (x, y) = (number(rect.x.get()), number(rect.y.get()));
    format!("{x} from the left and {y} from the top, {}", words(Size { w: rect.w, h: rect.h }))
}

fn overlapping(info: &FrameInfo, frame: &Frame, drafts: &mut Vec<Draft>) {
    let slots: Vec<(&str, Rect)> = info
        .all_slots()
        // The lines of a text keep within the outline of a slot that is no rectangle, so its box tells nothing.
        .filter(|name| !frame.shapes.contains_key(*name))
        .filter_map(|name| Some((name, frame.slot(name)?)))
        .collect();
    for (at, (a, one)) in slots.iter().enumerate() {
        for (b, other) in slots.iter().skip(at + 1) {
            let wide = one.right().min(other.right()) - one.x.max(other.x);
            let high = one.bottom().min(other.bottom()) - one.y.max(other.y);
            if wide.get() > OVERLAP && high.get() > OVERLAP {
                let both = Size { w: wide, h: high };
                let message =
                    format!("the slots `{a}` and `{b}` of the frame `{}` overlap by {}", info.name, words(both));
                let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns);
                drafts.push(draft.why("what stands in them is printed over each other").help("draw them apart"));
            }
        }
    }
}

fn unknown(info: &FrameInfo, frame: &Frame, drafts: &mut Vec<Draft>) {
    let known: Vec<&str> = info.all_slots().collect();
    for name in frame.slots.keys().filter(|name| !known.contains(&name.as_str())) {
        let message = format!("the frame `{}` has a slot `{name}`, which nothing is set in", info.name);
        let help = if known.is_empty() { "it has no slots".to_owned() } else { meant(name, &known, "its slots") };
        let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns).help(help);
        drafts.push(draft.why("the place that you drew stays empty"));
    }
}

fn small(info: &FrameInfo, frame: &Frame, drafts: &mut Vec<Draft>) {
    let Some(usual) = usual_frames().get(info.name) else { return };
    for (name, slot) in &usual.slots {
        let Some(rect) = frame.slot(name) else { continue };
        let size = Size { w: rect.w, h: rect.h };
        if size.w >= slot.least.w * LEAST && size.h >= slot.least.h * LEAST {
            continue;
        }
        let message = format!(
            "the slot `{name}` of the frame `{}` is {}; {} is the least that the built-in themes have",
            info.name,
            words(size),
            words(slot.least)
        );
        let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns);
        let why = "words that fit the built-in themes overflow it: text is not set smaller to suit a smaller place";
        drafts.push(draft.why(why).help("make room for it in the drawing: less ornament, or closer to the edge"));
    }
}

/// By how much of its proportions a frame of a printed prop may be stretched: as far as the pieces go.
const STRETCH: f64 = 0.14;

/// Frames that need not be there and are of other proportions than what they are for.
pub fn proportions(theme: &Loaded, palette: &Palette) -> Vec<Draft> {
    let off = off_size(theme, palette);
    let told = |name: &str| off.iter().any(|(known, ..)| known == name);
    let mut drafts = Vec::new();
    for info in MORE_FRAMES.iter().filter(|info| !told(info.name)) {
        let Some(frame) = theme.frame(info.name).and_then(|svg| Frame::read(svg, palette).ok()) else { continue };
        let Some(usual) = usual_frames().get(info.name) else { continue };
        let of = |size: Size| size.w.get() / size.h.get();
        if (of(frame.size) / of(usual.size)).ln().abs() <= STRETCH {
            continue;
        }
        let message = format!(
            "the frame `{}` is {}, and it is for {}: {} is usual",
            info.name,
            words(frame.size),
            info.about,
            words(usual.size)
        );
        let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns);
        let why = "a prop of the usual proportions is printed with a plain border in its stead";
        drafts.push(draft.why(why).help("draw it in about those proportions; its size is free"));
    }
    drafts
}

/// Classes in the art that look like colour roles and are none.
pub fn classes(theme: &Loaded) -> Vec<Draft> {
    let roles: Vec<&str> = ROLES.iter().map(|role| role.name).collect();
    let mut drafts = Vec::new();
    for (path, svg) in &theme.art {
        for class in unknown_roles(svg) {
            let (kind, role) = class.split_at(2);
            let help = match crate::kit::file::nearest(role, &roles) {
                Some(near) => format!("did you mean `{kind}{near}`?"),
                None => format!("the roles are {}", roles.join(", ")),
            };
            let message = format!("the class `{class}` names no colour role ({}/{path})", theme.theme.id);
            let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns).help(help);
            drafts.push(draft.why("what wears it keeps its own colour when the palette changes"));
        }
    }
    drafts
}
