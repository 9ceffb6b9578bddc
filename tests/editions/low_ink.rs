//! The low-ink edition: line work, with less ink than the usual edition in every theme, and nothing solid.

use inklatch::checks::LevelProof;
use inklatch::diag::Level;
use inklatch::face::{Face, Frame, clean_svg};
use inklatch::print::Raster;
use inklatch::theme::{Edition, FRAMES, Palette, builtin_ids, load_builtin};
use inklatch::units::Rect;

use super::{Dressed, dressed, sound};

/// Pixels in a millimetre of the pictures that are looked at.
const SCALE: f64 = 8.0;

/// The ink on a face, 0 to 1 of white paper: how far its pixels are from white, in the mean.
fn ink(raster: &Raster) -> f64 {
    let dark: f64 = raster
        .rgba
        .as_chunks::<4>()
        .0
        .iter()
        .map(|[r, g, b, a]| {
            let mean = (f64::from(*r) + f64::from(*g) + f64::from(*b)) / 3.0 / 255.0;
            (1.0 - mean) * f64::from(*a) / 255.0
        })
        .sum();
    dark / f64::from(raster.width) / f64::from(raster.height)
}

/// Ink and area of all pieces of one level, in square millimetres.
fn inked(dressed: &Dressed, level: &LevelProof) -> f64 {
    let faces = level.party.pieces.iter().map(|piece| &piece.front);
    faces
        .map(|face| {
            let set = dressed.press.face(face).unwrap();
            ink(&set.raster(2.0).unwrap()) * face.size.w.get() * face.size.h.get()
        })
        .sum()
}

#[test]
fn both_kits_in_every_theme_are_sound_and_need_less_ink() {
    for dressed in dressed() {
        let levels = [Level::Standard];
        let colour = sound(&dressed, &levels, Edition::Colour);
        let low = sound(&dressed, &levels, Edition::LowInk);
        let (all, less) = (inked(&dressed, &colour.levels[0]), inked(&dressed, &low.levels[0]));
        let share = less / all;
        println!("{:<20} {:<10} {all:>8.0} mm2 {less:>8.0} mm2 {share:.2}", dressed.kit.id, dressed.theme.theme.id);
        assert!(share < 0.93, "{} in {}: {share:.3} of the ink", dressed.kit.id, dressed.theme.theme.id);
    }
}

/// The widest inked square of a picture, in pixels.
fn widest(raster: &Raster) -> u32 {
    let (w, h) = (raster.width as usize, raster.height as usize);
    let mut above = vec![0_u32; w];
    let mut most = 0;
    for y in 0..h {
        let mut row = vec![0_u32; w];
        for x in 0..w {
            let [r, g, b, a] = raster.rgba.as_chunks::<4>().0[y * w + x];
            // Half of the light and more is kept back: no line's edge.
            let dark = a > 200 && (u16::from(r) + u16::from(g) + u16::from(b)) < 600;
            if dark {
                let (left, up, both) = if x > 0 { (row[x - 1], above[x], above[x - 1]) } else { (0, above[x], 0) };
                row[x] = left.min(up).min(both) + 1;
                most = most.max(row[x]);
            }
        }
        above = row;
    }
    most
}

#[test]
fn no_frame_and_no_symbol_has_a_solid_ground() {
    let none = std::collections::BTreeMap::new();
    let press = &crate::common::PRESS;
    for id in builtin_ids() {
        let theme = load_builtin(&id).unwrap();
        let palette = Palette::new(&theme.theme.palette, &none).unwrap().in_edition(Edition::LowInk);
        for info in FRAMES {
            let frame = Frame::read(theme.frame(info.name).unwrap(), &palette).unwrap();
            let raster = press.face(&Face::on(&frame, "")).unwrap().raster(SCALE).unwrap();
            let solid = f64::from(widest(&raster)) / SCALE;
            assert!(solid < 1.3, "{id}: the frame {} has a solid of {solid} mm", info.name);
        }
        for name in theme.theme.symbols.keys() {
            let svg = clean_svg(theme.symbol(name).unwrap(), &palette).unwrap();
            let mut face = Face::new(inklatch::units::Size::mm(10.0, 10.0), "");
            face.art(svg, Rect::mm(0.0, 0.0, 10.0, 10.0), "");
            let raster = press.face(&face).unwrap().raster(SCALE * 2.0).unwrap();
            let solid = f64::from(widest(&raster)) / SCALE / 2.0;
            assert!(solid < 1.2, "{id}: the symbol {name} has a solid of {solid} mm");
            assert!(ink(&raster) > 0.01, "{id}: the symbol {name} is all but gone");
        }
    }
}
