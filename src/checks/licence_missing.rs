use super::{Draft, Facts, Sink};
use crate::diag::Anchor;
use crate::files::{Builtin, Files as _, VPath};

check!(
    /// ## What it does
    /// Flags a picture or a lettering with no word on where it comes from and what may be done with it: a theme
    /// without a credit, a picture of the kit's own or a font of the author's own that `credits` does not name.
    ///
    /// ## Why it matters at the table
    /// A kit that is given away or sold hands other people's work on, and its maker must be allowed to.
    ///
    /// ## How to mend
    /// Write down who made it and under which licence, or use art and fonts of your own.
    LicenceMissing, "licence-missing", Warns, "art or lettering with no source and licence",
    "a kit hands other people's work on, and its maker must be allowed to", run
);

fn run(facts: &Facts<'_>, sink: &mut Sink) {
    let kit = facts.kit;
    if facts.theme.theme.credit.trim().is_empty() {
        let message = format!("the theme {} does not say who drew it, nor under which licence", facts.theme.theme.name);
        sink.add(Draft::new(Anchor::Theme, message).help("write it into `credit` of the theme's theme.ron"));
    }
    let credited = |name: &str| kit.credits.get(name).is_some_and(|credit| !credit.trim().is_empty());
    for note in &kit.notes {
        let Some(picture) = note.picture.as_ref().filter(|picture| !credited(picture.as_str())) else { continue };
        let message = format!("the picture {picture} has no source and no licence");
        let draft = Draft::new(Anchor::Note(note.id.clone()), message);
        sink.add(draft.help("name its maker and its licence under Title and guests, Sources; your own work is \"my own\""));
    }
    let carried = carried();
    for (role, family) in &kit.look.lettering {
        let own = facts.theme.theme.lettering.values().any(|of_theme| of_theme == family);
        let squeezed: String = family.chars().filter(|c| !c.is_whitespace()).collect();
        if family.trim().is_empty() || own || carried.contains(&squeezed) || credited(family) {
            continue;
        }
        let message = format!("the font {family} ({role}) has no source and no licence");
        let draft = Draft::new(Anchor::Theme, message);
        sink.add(draft.help("name its maker and its licence under Title and guests, Sources, or take one of the bundled fonts"));
    }
}

/// The families that the program carries together with their licences, without spaces.
fn carried() -> Vec<String> {
    let Ok(folder) = VPath::new("assets/fonts") else { return Vec::new() };
    let files = Builtin::new().list(&folder).unwrap_or_default();
    let name = |path: &VPath| path.as_str().rsplit('/').next().map(str::to_owned);
    files.iter().filter_map(name).filter_map(|name| name.strip_suffix("-LICENCE.txt").map(str::to_owned)).collect()
}
