//! The bundle: what an author hands over, made from an opened kit.
//!
//! A bundle is a folder `players/ hints/ host/ pieces/ listing/` with a `manifest.json` that accounts for every file.
//! It is made whole in a folder beside its place and then renamed: one that failed or was cancelled leaves
//! nothing behind. The same kit gives the same bytes.

mod archive;
mod documents;
mod export;
mod guide;
mod listing;
mod located;
mod manifest;
mod names;
mod open;
mod options;
mod pieces;
mod place;
mod plays;
mod printer_test;
mod redressed;
mod save;
mod scaffold;
mod side_by_side;
mod steps;
mod taken;
mod theme_copy;
mod themes;
#[cfg(test)]
mod told;
mod whole;

pub use documents::duplex;
pub use export::{Exported, export, export_proven, findings_of, press_of, prove, prove_editions};
pub use located::located;
pub use manifest::{Entry, FORMAT, Manifest};
pub use open::{DEMO_KITS, Opened, author_themes, find_theme, open, open_demo, open_in};
pub use options::{Go, NOTHING, Options, Progress, Shift};
pub use place::empty;
pub use plays::{PLAYS_FILE, plays_beside, save_plays};
pub use redressed::{Redone, mended, redone, save_in};
pub use save::{Saving, save, save_changed, save_theme};
pub use scaffold::{begin, scaffold, scaffold_from};
pub use side_by_side::{Side, pairs, side_by_side};
pub use taken::{Taken, take_picture};
pub use theme_copy::{begin_theme, bring_theme, copy_theme};
pub use themes::{ThemeFound, ThemeNamed, ThemeSource, kit_themes, theme_in, theme_names, themes};
