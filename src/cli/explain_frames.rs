//! `inklatch explain frames`: each frame of a theme with its size, where its slots stand, and what is printed on it.

use std::collections::{BTreeMap, BTreeSet};
use std::io::Write;

use super::outcome::{CLEAN, Outcome};
use crate::diag::{Hinted, Trouble};
use crate::face::{EXAMPLE, UsualSlot, usual_frames};
use crate::ids::ThemeId;
use crate::mechanics::MECHANICS;
use crate::mechanics::sample::sample;
use crate::theme::{FRAMES, FrameInfo, MORE_FRAMES, Palette, load_builtin, usual_size};
use crate::units::Size;

/// Explains the frames.
pub(super) fn write(out: &mut dyn Write) -> Outcome {
    writeln!(
        out,
        "The frames of a theme: SVG pictures, named under `frames` of theme.ron. All numbers are millimetres."
    )?;
    writeln!(
        out,
        "A slot is where text or a mark goes: an element with the id `slot-NAME`, as a rule a rectangle that"
    )?;
    writeln!(
        out,
        "is neither filled nor stroked. It stands so far from the left and from the top of the picture, and is so"
    )?;
    writeln!(
        out,
        "wide and high, in the built-in theme `{EXAMPLE}`; \"at least\" is the least of all built-in themes, for"
    )?;
    writeln!(out, "which the texts of the program are written. Yours may stand elsewhere; keep about to those sizes.")?;
    writeln!(out, "`inklatch new FOLDER --theme-from {EXAMPLE}` writes that theme out, to begin from.")?;
    let worn = worn_by_mechanics()?;
    writeln!(out, "\nFrames that every theme draws\n")?;
    for info in FRAMES {
        frame(info, &worn, out)?;
    }
    writeln!(
        out,
        "Frames that a theme may draw: where it has none, or a prop has other proportions, a border stands in\n"
    )?;
    for info in MORE_FRAMES {
        frame(info, &worn, out)?;
    }
    writeln!(out, "A mechanic is listed where its sample stands on the frame; another setup may take another frame.")?;
    Ok(CLEAN)
}

fn frame(
    info: &FrameInfo,
    worn: &BTreeMap<String, BTreeSet<&'static str>>,
    out: &mut dyn Write,
) -> std::io::Result<()> {
    let known = usual_frames().get(info.name);
    let size = usual_size(info.name).or_else(|| known.map(|known| known.size)).unwrap_or_default();
    writeln!(out, "{:<12} {}, {}", info.name, sides(size), info.about)?;
    for name in info.all_slots() {
        let optional = match info.slots.contains(&name) {
            true => String::new(),
            false => format!("; may be left out: {}", info.may.1),
        };
        match known.and_then(|known| known.slots.get(name)) {
            Some(slot) => writeln!(out, "    slot-{name:<8} {}{optional}", stands(slot))?,
            None => writeln!(out, "    slot-{name}{optional}")?,
        }
    }
    let kit = Some(info.pieces.to_owned()).filter(|pieces| !pieces.is_empty());
    let mechanics: Vec<&str> = worn.get(info.name).into_iter().flatten().copied().collect();
    let mechanics = Some(format!(
        "{} {}",
        if mechanics.len() == 1 { "the mechanic" } else { "the mechanics" },
        mechanics.join(", ")
    ))
    .filter(|_| !mechanics.is_empty());
    let all: Vec<String> = kit.into_iter().chain(mechanics).collect();
    let all = if all.is_empty() { "no sample; setups that ask for it".to_owned() } else { all.join("; ") };
    for (at, line) in super::wrap::wrap(&format!("worn by {all}"), 92).iter().enumerate() {
        writeln!(out, "    {}{line}", if at == 0 { "" } else { "    " })?;
    }
    writeln!(out)
}

/// Where a slot stands: "left 16.5  top 7.8   42 × 9   at least 42 × 9".
fn stands(slot: &UsualSlot) -> String {
    let (x, y) = (number(slot.rect.x.get()), number(slot.rect.y.get()));
    let own = sides(Size { w: slot.rect.w, h: slot.rect.h });
    let shaped = if slot.shaped { "; a closed outline, whose lines the text follows" } else { "" };
    format!("left {x:<5} top {y:<5} {own:<13} at least {}{shaped}", sides(slot.least))
}

fn sides(size: Size) -> String {
    format!("{} × {}", number(size.w.get()), number(size.h.get()))
}

/// A length with at most one decimal.
fn number(value: f64) -> String {
    let text = format!("{value:.1}");
    text.trim_end_matches(".0").to_owned()
}

/// The mechanics whose samples stand on each frame.
fn worn_by_mechanics() -> Hinted<BTreeMap<String, BTreeSet<&'static str>>> {
    let id = ThemeId::new(EXAMPLE).ok_or_else(|| Trouble::new("the program carries no theme to show"))?;
    let theme = load_builtin(&id)?;
    let palette = Palette::new(&theme.theme.palette, &BTreeMap::new())?;
    let mut worn: BTreeMap<String, BTreeSet<&'static str>> = BTreeMap::new();
    for mechanic in MECHANICS {
        for frame in sample(*mechanic, &theme, &palette)?.frames {
            worn.entry(frame).or_default().insert(mechanic.meta().id);
        }
    }
    Ok(worn)
}
