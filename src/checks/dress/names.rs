use super::Draft;
use crate::diag::{Anchor, Severity};
use crate::face::Frame;
use crate::kit::file::nearest;
use crate::mechanics::MECHANICS;
use crate::theme::{FRAMES, Loaded, MORE_FRAMES, Palette, usual, usual_size};
use crate::units::Size;

/// How much larger or smaller than usual a side of a frame may be: texts are not set smaller to suit a smaller card (our
/// choice).
const FAR: f64 = 0.2;

/// Words and parts whose names are known nowhere, and words that the built-in themes fill and this one does not.
pub fn unknown(theme: &Loaded) -> Vec<Draft> {
    let mut drafts = Vec::new();
    let mut say = |severity, message: String, why: &str, help: String| {
        drafts.push(Draft::new(Anchor::Theme, message).severity(severity).why(why).help(help));
    };
    let usual = usual();
    let words = &theme.theme.words;
    let missing: Vec<&str> = usual.words.iter().map(String::as_str).filter(|name| !words.contains_key(*name)).collect();
    if !missing.is_empty() {
        let message = format!("words that the built-in themes fill are missing: {}", missing.join(", "));
        say(Severity::Warns, message, "a kit with such a slot cannot wear the theme", "add them to `words`".into());
    }
    for name in words.keys().filter(|name| !usual.words.contains(*name)) {
        match nearest(name, &missing) {
            Some(near) => {
                let help = format!("did you mean `{near}`?");
                let why = "the slot that was meant stays without its word";
                say(Severity::Warns, format!("the word `{name}` is none that the built-in themes fill"), why, help);
            }
            None => {
                let help = "a slot of this name is filled by this theme alone".to_owned();
                let why = "a kit that uses the slot cannot go into a theme that does not fill it";
                say(Severity::Notes, format!("the word `{name}` is one of its own"), why, help);
            }
        }
    }
    for mechanic in MECHANICS {
        let meta = mechanic.meta();
        let Some(parts) = theme.theme.dressings.get(meta.id) else { continue };
        let named = usual.parts.get(meta.id).into_iter().flatten().map(String::as_str);
        let known: Vec<&str> = named.chain(meta.parts.iter().map(|part| part.key)).collect();
        for part in parts.keys().filter(|part| !known.contains(&part.as_str())) {
            let help = match nearest(part, &known) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("its parts are {}", known.join(", ")),
            };
            let why = "what you wrote is printed nowhere, and the part keeps its plain name";
            say(Severity::Warns, format!("`{}` has no part `{part}` to dress", meta.id), why, help);
        }
    }
    let mechanics: Vec<&str> = MECHANICS.iter().map(|known| known.meta().id).collect();
    for id in theme.theme.dressings.keys().filter(|id| !mechanics.contains(&id.as_str())) {
        let help = match nearest(id, &mechanics) {
            Some(near) => format!("did you mean `{near}`?"),
            None => "`inklatch mechanics` lists the mechanics".to_owned(),
        };
        let why = "what you wrote is printed nowhere";
        say(Severity::Warns, format!("it dresses `{id}`, which is no mechanic"), why, help);
    }
    let frames: Vec<&str> = FRAMES.iter().chain(MORE_FRAMES).map(|info| info.name).collect();
    pictures_of_no_use("frame", theme.theme.frames.keys(), &frames, &mut say);
    pictures_of_no_use("ornament", theme.theme.ornaments.keys(), ORNAMENTS, &mut say);
    drafts
}

/// The ornaments that are drawn somewhere.
const ORNAMENTS: &[&str] = &["divider", "corner", "seal"];

/// Pictures under names that nothing asks for.
fn pictures_of_no_use<'a>(
    what: &str,
    named: impl Iterator<Item = &'a String>,
    known: &[&str],
    say: &mut impl FnMut(Severity, String, &str, String),
) {
    for name in named.filter(|name| !known.contains(&name.as_str())) {
        let help = meant(name, known, &format!("the {what}s"));
        say(Severity::Warns, format!("there is no {what} `{name}`"), "the picture is printed nowhere", help);
    }
}

/// Which name was meant, else what names there are.
pub(super) fn meant(name: &str, known: &[&str], all: &str) -> String {
    match nearest(name, known) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("{all} are {}", known.join(", ")),
    }
}

/// A size in words: "75 × 105 mm".
pub(super) fn words(size: Size) -> String {
    let side = |value: f64| format!("{value:.1}").trim_end_matches(".0").to_owned();
    format!("{} × {} mm", side(size.w.get()), side(size.h.get()))
}

/// Frames whose size is far from that in the built-in themes: their name, their size, the usual size.
pub(super) fn off_size(theme: &Loaded, palette: &Palette) -> Vec<(String, Size, Size)> {
    let frames = theme.theme.frames.keys().filter_map(|name| {
        let usual = usual_size(name)?;
        let size = Frame::read(theme.frame(name)?, palette).ok()?.size;
        let far = |side: f64, usual: f64| (side / usual - 1.0).abs() > FAR;
        let off = far(size.w.get(), usual.w.get()) || far(size.h.get(), usual.h.get());
        off.then(|| (name.clone(), size, usual))
    });
    frames.collect()
}

/// Frames that are drawn too small or too large.
pub fn sizes(theme: &Loaded, palette: &Palette) -> Vec<Draft> {
    let off = off_size(theme, palette).into_iter().map(|(name, size, usual)| {
        let message = format!("the frame `{name}` is {}; {} is usual", words(size), words(usual));
        let help = "save the picture at true size in millimetres: text is not set smaller to suit a smaller card";
        let why = if size.w < usual.w || size.h < usual.h {
            "texts that fit the built-in themes overflow it"
        } else {
            "fewer pieces fit on a sheet, and the largest fit on none"
        };
        Draft::new(Anchor::Theme, message).severity(Severity::Warns).why(why).help(help)
    });
    off.collect()
}

/// What to do about a text that does not fit a piece of this size, where a frame that was drawn too small is to blame.
pub fn blame(theme: &Loaded, palette: &Palette, piece: Size) -> Option<String> {
    let like = |a: f64, b: f64| (a - b).abs() < 0.5;
    let same = |size: &Size| like(size.w.get(), piece.w.get()) && like(size.h.get(), piece.h.get());
    let off = off_size(theme, palette);
    let small = off.iter().find(|(_, size, usual)| same(size) && (size.w < usual.w || size.h < usual.h));
    small.map(|(name, size, usual)| {
        format!("draw the theme's frame `{name}` at true size: it is {}; {} is usual", words(*size), words(*usual))
    })
}

/// A theme in a folder that is not called as it is.
pub fn misplaced(theme: &Loaded, folder: &str) -> Vec<Draft> {
    if theme.theme.id.as_str() == folder {
        return Vec::new();
    }
    let message = format!("the folder is called `{folder}`, and the theme's `id` is `{}`", theme.theme.id);
    let help = "give both the same name: kits find a theme by its folder";
    let draft = Draft::new(Anchor::Theme, message).severity(Severity::Warns).help(help);
    vec![draft.why("a kit that names it by its id does not find it")]
}

/// A theme with fewer symbols than a kit uses.
pub fn too_few(theme: &Loaded, used: usize) -> Vec<Draft> {
    let has = theme.theme.symbols.len();
    if has >= used {
        return Vec::new();
    }
    let message = crate::redress::too_few_symbols(&theme.theme, used);
    let draft =
        Draft::new(Anchor::Theme, message).severity(Severity::Warns).help("each symbol of the kit needs another");
    vec![
        draft.why(
            "marks and pictures that find no other stay those of the old season, and their pieces are not printed",
        ),
    ]
}
