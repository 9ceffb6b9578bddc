use std::path::PathBuf;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use notify::{Event, EventKind, RecommendedWatcher, RecursiveMode, Watcher as _};

use crate::diag::{Hinted, Trouble};

/// Watches folders for what other programs change in them.
pub struct Watch {
    changed: Arc<AtomicBool>,
    // Watching ends when this is dropped.
    _watcher: RecommendedWatcher,
}

impl Watch {
    /// Watches `folders`, each alone or with all below it; one that is not there is left out. `tell` is called, on a
    /// thread of its own, each time something has changed.
    ///
    /// # Errors
    /// When the system watches no more folders.
    pub fn new(folders: &[(PathBuf, bool)], tell: impl Fn() + Send + 'static) -> Hinted<Self> {
        let trouble = |error: &notify::Error| {
            Trouble::new(format!("what other programs change cannot be watched: {error}"))
                .hint("it shows when the kit is opened anew")
        };
        let changed = Arc::new(AtomicBool::new(false));
        let flag = changed.clone();
        let told = move |event: notify::Result<Event>| {
            // Reading is no change, and a lost event may have been one.
            let counts = event.map_or(true, |event| !matches!(event.kind, EventKind::Access(_)));
            if counts {
                flag.store(true, Ordering::Release);
                tell();
            }
        };
        let mut watcher = notify::recommended_watcher(told).map_err(|error| trouble(&error))?;
        for (folder, below) in folders.iter().filter(|(folder, _)| folder.is_dir()) {
            let mode = if *below { RecursiveMode::Recursive } else { RecursiveMode::NonRecursive };
            watcher.watch(folder, mode).map_err(|error| trouble(&error))?;
        }
        Ok(Self { changed, _watcher: watcher })
    }

    /// Whether something has changed since this was asked last.
    pub fn changed(&self) -> bool {
        self.changed.swap(false, Ordering::AcqRel)
    }
}
