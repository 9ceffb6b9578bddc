use std::sync::Arc;

use eframe::egui::{FontData, FontDefinitions, FontFamily};

use crate::app::tokens::{BOLD, SERIF, SERIF_BOLD};
use crate::files::{Builtin, Files as _, VPath};
use crate::limits;

/// The window's own faces, of those that the program carries: an easily read one for controls, a book face for
/// headings and long text.
const FACES: &[(&str, &str)] = &[
    ("ui", "assets/fonts/AtkinsonHyperlegible-Regular.ttf"),
    (BOLD, "assets/fonts/AtkinsonHyperlegible-Bold.ttf"),
    (SERIF, "assets/fonts/Alegreya-Regular.ttf"),
    (SERIF_BOLD, "assets/fonts/Alegreya-Bold.ttf"),
];

/// The window's fonts. A face that cannot be read is left out, and the toolkit's own stands in.
#[must_use]
pub fn definitions() -> FontDefinitions {
    let mut fonts = FontDefinitions::default();
    let fallback = fonts.families.get(&FontFamily::Proportional).cloned().unwrap_or_default();
    let files = Builtin::new();
    for (name, path) in FACES {
        let own = VPath::new(path).and_then(|path| files.read(&path, limits::FONT_BYTES)).ok();
        let mut chain = fallback.clone();
        if let Some(bytes) = own {
            fonts.font_data.insert((*name).to_owned(), Arc::new(FontData::from_owned(bytes)));
            chain.insert(0, (*name).to_owned());
        }
        let family = if *name == "ui" { FontFamily::Proportional } else { FontFamily::Name((*name).into()) };
        fonts.families.insert(family, chain);
    }
    fonts
}
