use crate::checks::Draft;
use crate::diag::{Anchor, Severity};
use crate::face::{Frame, clean_svg};
use crate::files::{Files, VPath};
use crate::mechanics::MECHANICS;
use crate::theme::{FRAMES, LETTERING, Loaded, Palette, ROLES};

/// Fewest symbols of a theme: seven locks and six things to tell apart, each with a picture of its own (our
/// choice).
const SYMBOLS: usize = 13;

/// Pictures that cannot be read, and what is left out of those that can.
pub fn unread(theme: &Loaded) -> Vec<Draft> {
    // A picture may be asked for twice; that it cannot be read is one thing to mend.
    let mut told = std::collections::BTreeSet::new();
    let lost = theme.missing.iter().filter(|trouble| told.insert((&trouble.place, &trouble.message)));
    let lost =
        lost.map(|trouble| Draft::of(Anchor::Theme, trouble).why("a piece that wears the picture is not printed"));
    let lost: Vec<Draft> = lost.collect();
    let less = theme.left_out.iter().map(|trouble| {
        let draft = Draft::of(Anchor::Theme, trouble).severity(Severity::Warns);
        draft.why("the picture is printed without it")
    });
    lost.into_iter().chain(less).collect()
}

/// What a theme ought to have and has not: frames, slots, the cut line, colours, lettering, symbols, dressings.
pub fn lacking(theme: &Loaded, palette: &Palette) -> Vec<Draft> {
    let mut drafts = Vec::new();
    let mut say = |severity, message: String, why: &str, help: String| {
        drafts.push(Draft::new(Anchor::Theme, message).severity(severity).why(why).help(help));
    };
    for info in FRAMES {
        let name = info.name;
        if !theme.theme.frames.contains_key(name) {
            let help = format!("draw it as an SVG picture and add `{name}` to `frames` of theme.ron");
            let why = "every piece that stands on it is missing from the sheets; `inklatch explain frames` lists them";
            say(Severity::Blocks, format!("the frame `{name}` is missing: {}", info.about), why, help);
            continue;
        }
        // One that is named and cannot be read is told already.
        let Some(svg) = theme.frame(name) else { continue };
        match Frame::read(svg, palette) {
            Err(trouble) => drafts_of(&mut say, name, &trouble),
            Ok(frame) => {
                for trouble in frame.lacks(info) {
                    let help = trouble.hints.into_iter().next().unwrap_or_default();
                    let why = match trouble.message.contains("slot") {
                        true => {
                            "what stands in that slot cannot be printed, and so its piece is missing from the sheets"
                        }
                        false => "no hint token can be cut out",
                    };
                    say(Severity::Blocks, trouble.message, why, help);
                }
            }
        }
    }
    for role in ROLES.iter().filter(|role| !theme.theme.palette.contains_key(role.name)) {
        let message = format!("the colour `{}` is missing: {}", role.name, role.about);
        let help = format!("add `{}` to `palette`; {} stands in", role.name, role.fallback);
        say(Severity::Warns, message, "a colour that you did not choose is printed", help);
    }
    for (role, about) in LETTERING.iter().filter(|(role, _)| !theme.theme.lettering.contains_key(*role)) {
        let message = format!("no font is named for `{role}`: {about}");
        let help = format!("add `{role}` to `lettering`; the font of `text` stands in");
        say(Severity::Warns, message, "its texts look like all others", help);
    }
    let symbols = theme.theme.symbols.len();
    if symbols < SYMBOLS {
        let help = format!("draw {SYMBOLS} or more: each lock and each thing to tell apart wears one");
        let why = "a kit with more marks and pictures than that cannot wear the theme";
        say(Severity::Warns, format!("the theme has {symbols} symbols"), why, help);
    }
    for name in theme.theme.symbols.keys() {
        if let Some(Err(trouble)) = theme.symbol(name).map(|svg| clean_svg(svg, palette)) {
            drafts_of(&mut say, name, &trouble);
        }
    }
    for mechanic in MECHANICS {
        let meta = mechanic.meta();
        if !theme.theme.dressings.contains_key(meta.id) {
            let parts: Vec<&str> = meta.parts.iter().map(|part| part.key).collect();
            let help = format!("add `{}` to `dressings`, with words for: {}", meta.id, parts.join(", "));
            let why = "guests and host read plain words, which no season has";
            say(Severity::Notes, format!("no words of its own for the parts of `{}`", meta.id), why, help);
        }
    }
    drafts
}

fn drafts_of(say: &mut impl FnMut(Severity, String, &str, String), name: &str, trouble: &crate::diag::Trouble) {
    let help = trouble.hints.first().cloned().unwrap_or_else(|| "draw it anew".to_owned());
    let why = "a piece that wears the picture is not printed";
    say(Severity::Blocks, format!("the picture `{name}` cannot be used: {}", trouble.message), why, help);
}

/// Art without a credit, and fonts of the theme's own without a licence beside them.
pub fn licence(theme: &Loaded, files: Option<&dyn Files>) -> Vec<Draft> {
    let mut drafts = Vec::new();
    if theme.theme.credit.trim().is_empty() {
        let draft = Draft::new(
            Anchor::Theme,
            format!("the theme {} says neither who made it nor its licence", theme.theme.name),
        );
        drafts.push(draft.help("fill `credit` of theme.ron: who drew and wrote it, and under what licence"));
    }
    let listed =
        files.zip(VPath::new("fonts").ok()).and_then(|(files, folder)| files.list(&folder).ok()).unwrap_or_default();
    let is_font = |path: &&VPath| matches!(path.extension().as_str(), "ttf" | "otf" | "ttc" | "otc");
    let licences: Vec<String> = listed
        .iter()
        .filter(|path| !is_font(path))
        .map(|path| path.file_name().to_lowercase())
        .filter(|name| ["licence", "license", "ofl", "copying"].iter().any(|word| name.contains(word)))
        .collect();
    for font in listed.iter().filter(is_font) {
        let stem = font.file_name().split(['-', '.', '_']).next().unwrap_or_default().to_owned();
        let begins = stem.to_lowercase();
        // One text for all fonts of the folder, or one that bears the family's name.
        let common = |name: &&String| !name.contains('-') || name.replace(' ', "").starts_with(&begins);
        if !licences.iter().any(|name| common(&name)) {
            let draft = Draft::new(Anchor::Theme, format!("the font {font} has no licence beside it"));
            drafts.push(draft.help(format!("put its licence text into fonts/, as {stem}-LICENCE.txt")));
        }
    }
    drafts
}
