use crate::checks::Draft;
use crate::diag::{Anchor, Severity};
use crate::face::{Face, Frame, Glance, Pictures, clean_svg};
use crate::limits;
use crate::print::{Press, Raster};
use crate::theme::colour::Eyes;
use crate::theme::{Colour, FRAMES, Loaded, Palette};
use crate::units::Rect;

/// CIEDE2000 difference below which two colours are one to most eyes, seen apart from each other: twice a just
/// noticeable difference of 2.3 (Mahy and others 1994, from memory).
const ONE_COLOUR: f64 = 4.6;
/// Least contrast of text (WCAG 2.2, success criterion 1.4.3).
const LEAST: f64 = 4.5;
/// Pixels to the millimetre at which grounds are looked at: lines of 0.3 mm still show.
const SCALE: f64 = 3.0;
/// Share of a slot that may be darker or lighter than text allows: a thin line through it hides no word.
const SPARE: f64 = 0.03;

/// Telling colours that are too near each other to some eyes.
pub fn alike_colours(theme: &Loaded) -> Vec<Draft> {
    let mut drafts = Vec::new();
    let mut colours = Vec::new();
    for (name, hex) in &theme.theme.colours {
        match Colour::parse(hex) {
            Some(colour) => colours.push((name, colour)),
            None => drafts.push(
                Draft::new(Anchor::Theme, format!("the telling colour {name}: \"{hex}\" is no colour"))
                    .help("write six hex digits, as in #1F2A44"),
            ),
        }
    }
    for (at, (a, one)) in colours.iter().enumerate() {
        for (b, other) in colours.iter().skip(at + 1) {
            let worst = Eyes::ALL
                .into_iter()
                .map(|eyes| (eyes.difference(*one, *other), eyes))
                .min_by(|a, b| a.0.total_cmp(&b.0));
            let Some((apart, eyes)) = worst.filter(|(apart, _)| *apart < limits::BANDS_APART) else { continue };
            let message =
                format!("{a} and {b} are {apart:.1} apart {}, less than {}", eyes.words(), limits::BANDS_APART);
            let severity = if apart < ONE_COLOUR { Severity::Blocks } else { Severity::Warns };
            let draft = Draft::new(Anchor::Theme, message).severity(severity);
            drafts.push(draft.help("make one of the two lighter and the other darker; lightness helps all eyes"));
        }
    }
    drafts
}

/// Symbols among `names` that look alike in print.
pub fn alike_pictures(theme: &Loaded, palette: &Palette, pictures: &Pictures, names: &[&str]) -> Vec<Draft> {
    let seen: Vec<(&str, Glance)> = names
        .iter()
        .filter_map(|name| {
            let svg = theme.symbol(name)?;
            let glance = pictures.glance(name, || Glance::of(&clean_svg(svg, palette)?));
            Some((*name, glance.ok()?))
        })
        .collect();
    let mut drafts = Vec::new();
    for (at, (a, one)) in seen.iter().enumerate() {
        for (b, other) in seen.iter().skip(at + 1) {
            if a != b && one.alike(other) {
                let message = format!("the symbols {a} and {b} look alike at print size");
                drafts.push(Draft::new(Anchor::Theme, message).help("draw one of the two anew, or use another"));
            }
        }
    }
    drafts
}

/// Slots of frames on whose ground text cannot be read.
pub fn grounds(theme: &Loaded, palette: &Palette, press: &Press) -> Vec<Draft> {
    let mut slots: Vec<(String, f64)> = Vec::new();
    let ink = palette.get("ink");
    for info in FRAMES {
        let Some(frame) = theme.frame(info.name).and_then(|svg| Frame::read(svg, palette).ok()) else { continue };
        let Ok(preview) = press.preview(&Face::on(&frame, ""), SCALE) else { continue };
        // A mark is a picture, and a field holds shapes that bring a ground of their own.
        for slot in info.slots.iter().filter(|slot| !["mark", "field", "dots"].contains(slot)) {
            // One that leaves the picture is told as that.
            let Some(rect) = frame.slot(slot).filter(|rect| Rect::of(frame.size).holds(*rect)) else { continue };
            let (faint, worst) = faint(&preview.raster, rect, ink);
            if faint > SPARE {
                slots.push((format!("slot `{slot}` of frame `{}`", info.name), worst));
            }
        }
    }
    // One pale ink makes every slot faint: that is one thing to mend.
    let Some((first, worst)) = slots.iter().min_by(|a, b| a.1.total_cmp(&b.1)) else { return Vec::new() };
    let on = match slots.len() {
        1 => format!("the ground of {first} has"),
        count => format!("the grounds of {count} slots has, at worst,"),
    };
    let message = format!("ink {ink} on {on} a ratio of {worst:.2}, below {LEAST}");
    let help = match slots.len() {
        1 => "draw the ground lighter there, or take a darker ink".to_owned(),
        _ => format!("take a darker ink, or draw the grounds lighter; the worst is {first}"),
    };
    vec![Draft::new(Anchor::Palette("ink".into()), message).help(help)]
}

/// Least contrast of what is drawn or set in each role on the theme's paper: headings of the host guide are set in the
/// accent; thin lines part what guests must tell apart (WCAG 2.2, 1.4.3 and 1.4.11).
const ROLE_LEAST: &[(&str, f64, &str)] = &[
    ("accent", LEAST, "headings and what stands out are set in it, read by lamplight"),
    ("line", 3.0, "it parts cells and shapes that guests must tell apart"),
];

/// Roles of the palette that are too faint for what is set or drawn in them. The ink is held against every ground by
/// [`grounds`].
pub fn roles(palette: &Palette) -> Vec<Draft> {
    let paper = palette.get("paper");
    let faint = ROLE_LEAST.iter().filter_map(|(role, least, why)| {
        let colour = palette.get(role);
        let ratio = colour.contrast(paper);
        let message = format!("{role} {colour} on paper {paper} has a ratio of {ratio:.2}, below {least}");
        let draft = Draft::new(Anchor::Palette((*role).into()), message).why(*why);
        (ratio < *least).then(|| draft.help("choose a darker colour, or a lighter paper"))
    });
    faint.collect()
}

/// The share of a rectangle on which ink stands out too little, and the least contrast there.
fn faint(raster: &Raster, rect: Rect, ink: Colour) -> (f64, f64) {
    let edge = |mm: f64| {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the range of u32")]
        let pixels = (mm * SCALE).round().clamp(0.0, f64::from(u32::MAX)) as u32;
        pixels
    };
    let (left, right) = (edge(rect.x.get()), edge(rect.right().get()).min(raster.width));
    let (top, bottom) = (edge(rect.y.get()), edge(rect.bottom().get()).min(raster.height));
    let (mut all, mut few, mut worst) = (0_u32, 0_u32, f64::INFINITY);
    for y in top..bottom {
        for x in left..right {
            let at = (y as usize * raster.width as usize + x as usize) * 4;
            let Some([r, g, b, a]) = raster.rgba.get(at..at + 4) else { continue };
            // Where nothing is drawn, white paper shows.
            let over = |c: u8| {
                let mixed = (u16::from(c) * u16::from(*a) + 255 * (255 - u16::from(*a)) + 127) / 255;
                u8::try_from(mixed).unwrap_or(u8::MAX)
            };
            let ratio = ink.contrast(Colour { r: over(*r), g: over(*g), b: over(*b) });
            all += 1;
            if ratio < LEAST {
                few += 1;
                worst = worst.min(ratio);
            }
        }
    }
    (f64::from(few) / f64::from(all.max(1)), worst)
}
