use std::path::PathBuf;

use crate::diag::Level;
use crate::sheet::Paper;

/// What to export, and where to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Options {
    /// The papers to lay out for, each on its own.
    pub papers: Vec<Paper>,
    /// The play levels to export.
    pub levels: Vec<Level>,
    /// Whether the bundle also holds all its files in one zip file.
    pub zip: bool,
    /// Whether to export although findings block it; the host guide then says so on its first page.
    pub force: bool,
    /// The folder in which the bundle's own folder, named by the kit's id, is put.
    pub out: PathBuf,
}

impl Default for Options {
    /// Both papers, all levels, into `out`.
    fn default() -> Self {
        Self {
            papers: Paper::ALL.to_vec(),
            levels: Level::ALL.to_vec(),
            zip: false,
            force: false,
            out: PathBuf::from("out"),
        }
    }
}

/// How far an export has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: usize,
    /// Steps in all.
    pub of: usize,
    /// What was done last, in a few words.
    pub what: String,
}

/// Whether to go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Go {
    /// Go on.
    On,
    /// Stop; nothing is left behind.
    Stop,
}
