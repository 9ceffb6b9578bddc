//! Whose the art and the lettering are, and under which licence.

use std::collections::BTreeSet;

use crate::bundle::Opened;
use crate::bundle::open::theme_files;
use crate::files::{Builtin, Files, VPath};
use crate::limits;
use crate::theme::Lettering;

/// The words by which a licence text names the licence that nearly every free font has.
const OFL: (&str, &str) = ("SIL Open Font License, Version 1.1", "SIL Open Font License 1.1");

/// What, and whose it is. Only what somebody has written down: the theme's credit, the kit's own, and the licence texts
/// beside the fonts.
pub(super) fn credits(opened: &Opened) -> Vec<(String, String)> {
    let (kit, theme) = (&opened.kit, &opened.theme.theme);
    let mut found = Vec::new();
    if !theme.credit.trim().is_empty() {
        found.push((format!("Art and words of the theme {}", theme.name), theme.credit.trim().to_owned()));
    }
    let pictures: BTreeSet<&str> =
        kit.notes.iter().filter_map(|note| note.picture.as_ref()).map(|path| path.as_str()).collect();
    for picture in pictures {
        if let Some(credit) = kit.credits.get(picture).filter(|credit| !credit.trim().is_empty()) {
            let name = picture.rsplit('/').next().unwrap_or(picture);
            found.push((format!("Picture {name}"), credit.trim().to_owned()));
        }
    }
    let Ok(lettering) = Lettering::new(&theme.lettering, &kit.look.lettering) else { return found };
    let families: BTreeSet<&str> = lettering.iter().map(|(_, family)| family).collect();
    for family in families {
        let own = kit.credits.get(family).map(|credit| credit.trim().to_owned()).filter(|credit| !credit.is_empty());
        if let Some(says) = own.or_else(|| licence(opened, family)) {
            found.push((format!("Lettering {family}"), says));
        }
    }
    found
}

/// What the licence text beside a font says: its line of copyright, and which licence it is.
fn licence(opened: &Opened, family: &str) -> Option<String> {
    let carried = Builtin::new();
    let bundled = text_of(&carried, "assets/fonts", family);
    let text = bundled.or_else(|| {
        let files = theme_files(opened.files.as_ref(), &opened.kit.theme)?;
        text_of(files.as_ref(), "fonts", family)
    })?;
    let owner = text.lines().map(str::trim).find(|line| line.to_lowercase().starts_with("copyright"))?;
    let owner = owner.trim_end_matches(['.', ',']);
    Some(if text.contains(OFL.0) { format!("{owner}. {}.", OFL.1) } else { format!("{owner}.") })
}

/// The licence text in a folder whose name begins with the family's.
fn text_of(files: &dyn Files, folder: &str, family: &str) -> Option<String> {
    let plain = |text: &str| text.chars().filter(|c| c.is_alphanumeric()).collect::<String>().to_lowercase();
    let wanted = plain(family);
    let listed = files.list(&VPath::new(folder).ok()?).ok()?;
    let is = |path: &&VPath| {
        let name = plain(path.file_name());
        name.strip_prefix(&wanted)
            .is_some_and(|rest| ["licence", "license", "ofl"].iter().any(|word| rest.starts_with(word)))
    };
    files.read_text(listed.iter().find(is)?, limits::TEMPLATE_BYTES).ok()
}
