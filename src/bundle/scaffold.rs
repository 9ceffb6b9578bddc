use super::open::DEMO_KITS;
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Files as _, VPath};
use crate::ids::KitId;
use crate::kit::file::{nearest, read_kit};
use crate::limits;

/// The fresh kit, below the carried files.
const FRESH: &str = "assets/kits/fresh/kit.ron";
/// Its title and id, as they stand in that file.
const TITLE: &str = "title: \"A Fresh Kit\"";
const ID: &str = "id: \"a-fresh-kit\"";

/// The text of a fresh `kit.ron` with this title: one box, one lock, one puzzle, sound as it stands, with
/// comments that say what to change.
///
/// # Errors
/// When the carried file cannot be read, which no title brings about.
pub fn scaffold(title: &str) -> Hinted<String> {
    let text = Builtin::new().read_text(&VPath::new(FRESH)?, limits::RON_BYTES)?;
    let quoted = format!("title: \"{}\"", title.replace('\\', "\\\\").replace('"', "\\\""));
    let id = format!("id: \"{}\"", KitId::from_text(title));
    let text = text.replacen(TITLE, &quoted, 1).replacen(ID, &id, 1);
    read_kit(&text, "kit.ron")?;
    Ok(text)
}

/// The text of a demo kit, to be changed into a kit of one's own.
///
/// # Errors
/// When the program carries no kit of this name; the hint names those that it does.
pub fn scaffold_from(demo: &str) -> Hinted<String> {
    let files = super::open::demo(demo)?.ok_or_else(|| {
        let mut trouble = Trouble::new(format!("the program carries no kit `{demo}`"));
        if let Some(near) = nearest(demo, &DEMO_KITS) {
            trouble = trouble.hint(format!("did you mean `{near}`?"));
        }
        trouble.hint(format!("its kits are {}", DEMO_KITS.join(" and ")))
    })?;
    files.read_text(&VPath::new("kit.ron")?, limits::RON_BYTES)
}
