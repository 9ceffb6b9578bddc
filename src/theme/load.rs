use std::collections::BTreeMap;
use std::sync::Arc;

use super::{FORMAT, Theme, vet};
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Files, VPath};
use crate::ids::ThemeId;
use crate::kit::file::from_ron;
use crate::limits;

/// A theme with the text of all its pictures.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// The theme file.
    pub theme: Theme,
    /// Pictures by path, as SVG text.
    pub art: BTreeMap<VPath, Arc<str>>,
    /// The kit's own pictures by path, as SVG text ([`super::load_pictures`]).
    pub pictures: BTreeMap<VPath, Arc<str>>,
    /// Pictures that the theme names and that are not there or cannot be read, with the reason.
    pub missing: Vec<Trouble>,
    /// What is left out of pictures when they are drawn, with file and element.
    pub left_out: Vec<Trouble>,
    /// The kit's own pictures that are not there or cannot be read, with the reason.
    pub lost_pictures: BTreeMap<VPath, Trouble>,
    /// What is left out of the kit's own pictures, each with its picture.
    pub less_pictures: Vec<(VPath, Trouble)>,
}

impl Loaded {
    /// The SVG text of a frame.
    #[must_use]
    pub fn frame(&self, name: &str) -> Option<&Arc<str>> {
        self.art.get(self.theme.frames.get(name)?)
    }

    /// The SVG text of a symbol.
    #[must_use]
    pub fn symbol(&self, name: &str) -> Option<&Arc<str>> {
        self.art.get(self.theme.symbols.get(name)?)
    }

    /// The SVG text of an ornament.
    #[must_use]
    pub fn ornament(&self, name: &str) -> Option<&Arc<str>> {
        self.art.get(self.theme.ornaments.get(name)?)
    }

    /// What the theme calls a part of a mechanic; `plain` where it has no word of its own.
    #[must_use]
    pub fn dressing<'a>(&'a self, mechanic: &str, part: &str, plain: &'a str) -> &'a str {
        self.theme.dressings.get(mechanic).and_then(|parts| parts.get(part)).map_or(plain, String::as_str)
    }
}

/// Loads the theme in `files`: `theme.ron` and the pictures that it names.
///
/// # Errors
/// When `theme.ron` is missing or cannot be read. A missing picture is no error but a finding: the kit can
/// still be opened and mended.
pub fn load(files: &dyn Files, name: &str) -> Hinted<Loaded> {
    let path = VPath::new("theme.ron")?;
    let text = files.read_text(&path, limits::RON_BYTES)?;
    let place = format!("{name}/theme.ron");
    let theme: Theme = from_ron(&text, &place)?;
    if theme.format > FORMAT || theme.format == 0 {
        return Err(Trouble::new(format!(
            "the theme is of format {}, and this program reads up to {FORMAT}",
            theme.format
        ))
        .at(place)
        .hint("use a newer Inklatch"));
    }
    let mut art = BTreeMap::new();
    let (mut missing, mut left_out) = (Vec::new(), Vec::new());
    for path in theme.frames.values().chain(theme.ornaments.values()).chain(theme.symbols.values()) {
        if art.contains_key(path) {
            continue;
        }
        let place = || format!("{name}/{path}");
        match read_picture(files, path) {
            Ok((text, remarks)) => {
                art.insert(path.clone(), text);
                left_out.extend(remarks.into_iter().map(|remark| remark.at(place())));
            }
            Err(trouble) => missing.push(trouble.at(place())),
        }
    }
    Ok(Loaded {
        theme,
        art,
        pictures: BTreeMap::new(),
        missing,
        left_out,
        lost_pictures: BTreeMap::new(),
        less_pictures: Vec::new(),
    })
}

/// A picture's SVG text, looked through ([`vet`]), with what will be left out of it.
///
/// # Errors
/// When it cannot be read, or holds what no picture may hold.
pub fn read_picture(files: &dyn Files, path: &VPath) -> Hinted<(Arc<str>, Vec<Trouble>)> {
    let bytes = files.read(path, limits::SVG_BYTES)?;
    let text = String::from_utf8(bytes).map_err(|_| {
        Trouble::new("this is no SVG picture: it holds bytes that are no text")
            .hint("save it as plain SVG from the drawing program; another kind of picture can be embedded in one")
    })?;
    let remarks = vet(&text)?;
    Ok((Arc::from(text), remarks))
}

/// The ids of the built-in themes, sorted.
#[must_use]
pub fn builtin_ids() -> Vec<ThemeId> {
    let folder = VPath::new("themes").unwrap_or_default();
    let mut ids: Vec<ThemeId> = Builtin::new()
        .list(&folder)
        .unwrap_or_default()
        .iter()
        .filter_map(|path| ThemeId::new(path.as_str().strip_prefix("themes/")?.strip_suffix("/theme.ron")?))
        .collect();
    ids.sort();
    ids
}

/// Loads a built-in theme.
///
/// # Errors
/// When there is none with this id.
pub fn load_builtin(id: &ThemeId) -> Hinted<Loaded> {
    let known = builtin_ids();
    if !known.contains(id) {
        let names: Vec<&str> = known.iter().map(ThemeId::as_str).collect();
        let mut trouble = Trouble::new(format!("there is no theme `{id}`"));
        if let Some(near) = crate::kit::file::nearest(id.as_str(), &names) {
            trouble = trouble.hint(format!("did you mean `{near}`?"));
        }
        return Err(trouble.hint(format!("built in: {}", names.join(", "))));
    }
    load(&Builtin::below(VPath::new("themes")?.join(id.as_str())?), id.as_str())
}
