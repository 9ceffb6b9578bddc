use std::path::Path;

use super::outcome::{CLEAN, Outcome};
use crate::bundle;

/// Opens the window on a kit.
pub(super) fn run(kit: Option<&Path>) -> Outcome {
    crate::app::run(bundle::open(kit)?)?;
    Ok(CLEAN)
}
