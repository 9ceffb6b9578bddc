use crate::diag::{Hinted, Trouble};
use crate::face::{Frame, Glance, clean_svg};
use crate::files::{Files, VPath};
use crate::ids::{ThemeId, slug};
use crate::limits;
use crate::theme::{FRAMES, MORE_FRAMES, Palette, PictureKind, read_picture};

/// A picture from elsewhere, copied into a theme of the kit's own.
#[derive(Clone, Debug)]
pub struct Taken {
    /// Where it lies now, in the theme's folder.
    pub path: VPath,
    /// What is left out of it when it is drawn, with the element.
    pub left_out: Vec<Trouble>,
}

/// Copies the picture `file` of the folder `from` into `themes/<theme>/art/` of the kit, for the frame, ornament or
/// symbol `name`. No picture that is there is overwritten, so that the step can be taken back.
///
/// # Errors
/// When the picture cannot be read, holds what no picture may hold, or cannot serve: a frame without one of its slots,
/// a token without its cut line. Nothing is written then.
pub fn take_picture(
    kit: &dyn Files,
    theme: &ThemeId,
    (kind, name): (PictureKind, &str),
    (from, file): (&dyn Files, &VPath),
    palette: &Palette,
) -> Hinted<Taken> {
    if file.extension() != "svg" {
        return Err(Trouble::new("this is no SVG picture")
            .at(file.to_string())
            .hint("save it as plain SVG from the drawing program"));
    }
    let at = |trouble: Trouble| trouble.at(file.to_string());
    let (svg, left_out) = read_picture(from, file)?;
    let cleaned = clean_svg(&svg, palette).map_err(at)?;
    Glance::of(&cleaned).map_err(at)?;
    if let (PictureKind::Frame, Some(info)) = (kind, FRAMES.iter().chain(MORE_FRAMES).find(|info| info.name == name)) {
        let lacking = Frame::read(&svg, palette).map_err(at)?.lacks(info);
        if let Some(first) = lacking.first() {
            return Err(lacking.iter().skip(1).fold(first.clone().at(file.to_string()), |all, more| {
                let help = more.hints.first().map_or("", String::as_str);
                all.hint(format!("and {}: {help}", more.message))
            }));
        }
    }
    let folder = VPath::new("themes")?.join(theme.as_str())?;
    let stem = slug(file.file_name().rsplit_once('.').map_or("", |(stem, _)| stem));
    for count in 1..=limits::PICTURE_NAMES {
        let tail = if count == 1 { String::new() } else { format!("-{count}") };
        let path = VPath::new("art")?.join(&format!("{stem}{tail}.svg"))?;
        let place = folder.join(path.as_str())?;
        let same = kit.read_text(&place, limits::SVG_BYTES).is_ok_and(|there| there == *svg);
        if !same && kit.exists(&place) {
            continue;
        }
        if !same {
            kit.write(&place, svg.as_bytes())?;
        }
        return Ok(Taken { path, left_out });
    }
    Err(Trouble::new(format!("the theme has too many pictures called {stem}")).hint("give the picture another name"))
}
