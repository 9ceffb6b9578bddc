use std::path::Path;

use super::outcome::{CLEAN, Outcome};
use crate::bundle;
use crate::diag::Trouble;

/// Opens the window on a kit.
pub(super) fn run(kit: Option<&Path>) -> Outcome {
    let opened = bundle::open(kit)?;
    if opened.kit.title.is_empty() {
        return Ok(CLEAN);
    }
    Err(Trouble::new("this build has no window yet")
        .hint("`inklatch check` and `inklatch export` work without one")
        .into())
}
