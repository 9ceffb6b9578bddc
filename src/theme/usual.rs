//! What the built-in themes have in common: the sizes of their pictures, the words that they fill, the parts that they
//! name. A theme of one's own is held against it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::OnceLock;

use super::Theme;
use super::load::builtin_ids;
use crate::files::{Builtin, Files as _, VPath};
use crate::kit::file::from_ron;
use crate::limits;
use crate::units::Size;

/// Sizes of frames and ornaments in the built-in themes, width and height in millimetres; a test holds them to the art.
pub const SIZES: &[(&str, Size)] = &[
    ("portrait", Size::mm(75.0, 105.0)),
    ("landscape", Size::mm(105.0, 75.0)),
    ("square", Size::mm(80.0, 80.0)),
    ("note", Size::mm(105.0, 75.0)),
    ("letterhead", Size::mm(190.0, 46.0)),
    ("letterfoot", Size::mm(190.0, 16.0)),
    ("sign", Size::mm(190.0, 62.0)),
    ("bookmark", Size::mm(52.0, 180.0)),
    ("cover", Size::mm(130.0, 185.0)),
    ("cover-back", Size::mm(130.0, 185.0)),
    ("disc", Size::mm(72.0, 72.0)),
    ("label", Size::mm(95.0, 58.0)),
    ("closing", Size::mm(150.0, 100.0)),
    ("token", Size::mm(58.0, 66.0)),
    ("board", Size::mm(190.0, 250.0)),
    ("tag", Size::mm(40.0, 70.0)),
    ("divider", Size::mm(60.0, 5.0)),
    ("corner", Size::mm(20.0, 20.0)),
    ("seal", Size::mm(24.0, 24.0)),
];

/// The size of a frame or an ornament in the built-in themes; none where it may have any.
#[must_use]
pub fn usual_size(name: &str) -> Option<Size> {
    SIZES.iter().find(|(known, _)| *known == name).map(|(_, size)| *size)
}

/// What the built-in theme files say.
#[derive(Debug, Default)]
pub struct Usual {
    /// Names of the words that every one of them fills.
    pub words: BTreeSet<String>,
    /// Parts that any of them names, by mechanic.
    pub parts: BTreeMap<String, BTreeSet<String>>,
}

/// What the built-in themes say, read once.
#[must_use]
pub fn usual() -> &'static Usual {
    static USUAL: OnceLock<Usual> = OnceLock::new();
    USUAL.get_or_init(|| {
        let mut usual = Usual::default();
        // A carried theme that cannot be read would fail its own tests; here it only names nothing.
        let read = |id: &crate::ids::ThemeId| -> Option<Theme> {
            let file = VPath::new("themes").ok()?.join(id.as_str()).ok()?.join("theme.ron").ok()?;
            let text = Builtin::new().read_text(&file, limits::RON_BYTES).ok()?;
            from_ron(&text, file.as_str()).ok()
        };
        for (at, theme) in builtin_ids().iter().filter_map(read).enumerate() {
            let words: BTreeSet<String> = theme.words.into_keys().collect();
            usual.words = if at == 0 { words } else { usual.words.intersection(&words).cloned().collect() };
            for (mechanic, parts) in theme.dressings {
                usual.parts.entry(mechanic).or_default().extend(parts.into_keys());
            }
        }
        usual
    })
}
