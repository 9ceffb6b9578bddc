//! What the frames of the built-in themes have in common: where their slots stand, and the least that each measures.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use super::Frame;
use crate::theme::{FRAMES, FrameInfo, MORE_FRAMES, Palette, builtin_ids, load_builtin};
use crate::units::{Rect, Size};

/// The theme whose frames serve as the example: line work alone, so the plainest.
pub const EXAMPLE: &str = "plain";

/// A frame as the built-in themes draw it.
#[derive(Clone, Debug, Default)]
pub struct UsualFrame {
    /// Its size in the theme [`EXAMPLE`].
    pub size: Size,
    /// Its slots by name.
    pub slots: BTreeMap<&'static str, UsualSlot>,
}

/// A slot of a frame as the built-in themes have it.
#[derive(Clone, Copy, Debug)]
pub struct UsualSlot {
    /// Where it stands in the theme [`EXAMPLE`]; the bounding box of one that is no rectangle.
    pub rect: Rect,
    /// Whether it is no upright rectangle there.
    pub shaped: bool,
    /// The least width and the least height that it has in any of them.
    pub least: Size,
}

/// The frames of the built-in themes by name, read once.
#[must_use]
pub fn usual_frames() -> &'static BTreeMap<&'static str, UsualFrame> {
    static USUAL: OnceLock<BTreeMap<&'static str, UsualFrame>> = OnceLock::new();
    USUAL.get_or_init(|| {
        let mut usual: BTreeMap<&'static str, UsualFrame> = BTreeMap::new();
        let none = BTreeMap::new();
        // A carried theme that cannot be read would fail its own tests; here it only adds nothing.
        for loaded in builtin_ids().iter().filter_map(|id| load_builtin(id).ok()) {
            let Ok(palette) = Palette::new(&loaded.theme.palette, &none) else { continue };
            let example = loaded.theme.id.as_str() == EXAMPLE;
            for info in FRAMES.iter().chain(MORE_FRAMES) {
                let Some(frame) = loaded.frame(info.name).and_then(|svg| Frame::read(svg, &palette).ok()) else {
                    continue;
                };
                add(usual.entry(info.name).or_default(), info, &frame, example);
            }
        }
        usual
    })
}

fn add(known: &mut UsualFrame, info: &FrameInfo, frame: &Frame, example: bool) {
    if example {
        known.size = frame.size;
    }
    for name in info.all_slots() {
        let Some(rect) = frame.slot(name) else { continue };
        let size = Size { w: rect.w, h: rect.h };
        let shaped = frame.shapes.contains_key(name);
        let slot = known.slots.entry(name).or_insert(UsualSlot { rect, shaped, least: size });
        slot.least = Size { w: slot.least.w.min(size.w), h: slot.least.h.min(size.h) };
        if example {
            (slot.rect, slot.shaped) = (rect, shaped);
        }
    }
}
