use std::sync::Arc;

use super::{Ground, Item, Job, Shown, image, scale};
use crate::diag::{Anchor, Hinted};
use crate::face::{Align, Audience, Face, Role, TextRun, Valign};
use crate::print::Press;
use crate::script::{Rich, Script, capital};
use crate::theme::{Lettering, Palette};
use crate::units::{Mm, Pt, Rect, Size};

/// What the ids of specimens begin with; no piece of a kit has a colon in its id.
pub const SPECIMEN: &str = "specimen:";
/// Size of a specimen, in millimetres.
const SIZE: (f64, f64) = (110.0, 30.0);
/// Greatest size of running text, and of titles and what is written by hand.
const TYPE: (f64, f64) = (12.0, 26.0);
/// Characters of running text that are shown.
const LINE: usize = 150;

/// The kit's own words in every family at hand, for one lettering role.
pub fn specimens(
    job: &Job,
    role: &str,
    shown: &mut Shown,
    stop: &dyn Fn() -> bool,
    report: &dyn Fn(Shown),
) -> Hinted<()> {
    let theme = &job.theme.theme;
    let ink = Palette::new(&theme.palette, &job.kit.look.palette)?.get("ink");
    let script = Script::new(&job.kit, theme, job.level);
    let now = Lettering::new(&theme.lettering, &job.kit.look.lettering)?.family(role).to_owned();
    let letter = &script.letter;
    let (role_of, words, most) = match role {
        "display" => (Role::Display, script.title.clone(), TYPE.1),
        "hand" => (Role::Hand, letter.signature.text(), TYPE.1),
        "code" => (Role::Code, format!("{}  0 O o  1 I l  2 Z  5 S  6 9", script.title), TYPE.0),
        _ => (Role::Text, letter.body.text().chars().take(LINE).collect(), TYPE.0),
    };
    let words = if words.trim().is_empty() { script.title.clone() } else { words };
    let size = Size { w: Mm::new(SIZE.0), h: Mm::new(SIZE.1) };
    let rect = Rect { x: Mm::new(4.0), y: Mm::new(3.0), w: size.w - Mm::new(8.0), h: size.h - Mm::new(6.0) };
    for family in job.fonts.families() {
        if stop() {
            return Ok(());
        }
        let mut own = job.kit.look.lettering.clone();
        own.insert(role.to_owned(), family.clone());
        let press = Press::new(&job.fonts, &Lettering::new(&theme.lettering, &own)?)?;
        let mut face = Face::new(size, format!("\"{words}\" in {family}"));
        let run = TextRun::new(rect, role_of, Rich::plain(words.clone()), Pt::new(most), ink, Anchor::Theme);
        face.text(run.aligned(Align::Centre, Valign::Middle).at_least(Pt::new(7.0)));
        let preview = press.preview(&face, scale(size, job.width_px))?;
        let mut missing: Vec<char> = preview.missing.iter().map(|glyph| glyph.text).collect();
        missing.sort_unstable();
        missing.dedup();
        let worn = if family == now { ", as it is" } else { "" };
        shown.items.push(Item {
            id: format!("{SPECIMEN}{family}"),
            label: format!("{family}{worn}"),
            alt: format!("{}: {words}", capital(role)),
            audience: Audience::Players,
            size,
            copies: 1,
            ground: Ground::Rect,
            image: Arc::new(image(&preview.raster)),
            overflows: Vec::new(),
            missing,
            folds: Vec::new(),
            facts: None,
        });
        report(shown.clone());
    }
    Ok(())
}
