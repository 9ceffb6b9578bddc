use std::path::PathBuf;

use serde::{Deserialize, Serialize};

use crate::files::{Disk, Files as _, VPath};
use crate::kit::file::{from_ron, to_ron};
use crate::limits;

/// Least and greatest zoom of the window, in percent.
pub const ZOOM: (u16, u16) = (100, 200);
/// One step of zoom, in percent.
pub const ZOOM_STEP: u16 = 10;

/// What the author likes; saved, never undone. What cannot be read falls back to the default.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// Dark rather than light.
    pub dark: bool,
    /// Size of everything, in percent.
    pub zoom: u16,
    /// Whether the findings are shown below.
    pub findings: bool,
}

impl Default for Prefs {
    fn default() -> Self {
        Self { dark: false, zoom: ZOOM.0, findings: true }
    }
}

impl Prefs {
    /// The saved preferences, or the default.
    #[must_use]
    pub fn load() -> Self {
        let read = || {
            let text = Disk::new(folder()?).read_text(&VPath::new("window.ron").ok()?, limits::RON_BYTES).ok()?;
            from_ron::<Self>(&text, "window.ron").ok()
        };
        let mut prefs = read().unwrap_or_default();
        prefs.zoom = prefs.zoom.clamp(ZOOM.0, ZOOM.1);
        prefs
    }

    /// Saves the preferences. That they cannot be saved is no reason to bother the author.
    pub fn save(&self) {
        let write = || {
            let text = to_ron(self).ok()?;
            Disk::new(folder()?).write(&VPath::new("window.ron").ok()?, text.as_bytes()).ok()
        };
        let _ = write();
    }

    /// The zoom as a factor.
    #[must_use]
    pub fn zoom_factor(&self) -> f32 {
        f32::from(self.zoom) / 100.0
    }

    /// Zooms by a number of steps.
    pub fn zoom_by(&mut self, steps: i16) {
        let step = i16::try_from(ZOOM_STEP).unwrap_or(10).saturating_mul(steps);
        self.zoom = self.zoom.saturating_add_signed(step).clamp(ZOOM.0, ZOOM.1);
    }
}

/// The program's folder for settings (XDG Base Directory Specification: `$XDG_CONFIG_HOME`, absolute, else
/// `$HOME/.config`).
fn folder() -> Option<PathBuf> {
    let set = |name: &str| std::env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    Some(set("XDG_CONFIG_HOME").or_else(|| set("HOME").map(|home| home.join(".config")))?.join("inklatch"))
}
