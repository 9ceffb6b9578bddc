use std::path::PathBuf;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use eframe::egui;

use crate::app::ctx::PathFor;

/// Asks for a folder or a picture. The portal's window is one way, the path field in our own window another.
pub trait Dialogs {
    /// Whether a window of its own can be opened at all; else the path field is shown at once.
    fn available(&self) -> bool;
    /// Asks; the answer comes on the channel, none when the author waved it away.
    fn ask(&self, what: &PathFor, ctx: &egui::Context) -> Receiver<Option<PathBuf>>;
}

/// The desktop's own window, by its portal.
#[derive(Debug, Default)]
pub struct Portal;

impl Dialogs for Portal {
    fn available(&self) -> bool {
        // The portal is reached over the session bus; without one it never answers.
        std::env::var_os("DBUS_SESSION_BUS_ADDRESS").is_some() && std::env::var_os("INKLATCH_PATH_FIELD").is_none()
    }

    fn ask(&self, what: &PathFor, ctx: &egui::Context) -> Receiver<Option<PathBuf>> {
        let (send, receive) = channel();
        let ctx = ctx.clone();
        let title = what.title();
        let picture = matches!(what, PathFor::Picture(_));
        std::thread::spawn(move || {
            let dialog = rfd::FileDialog::new().set_title(title);
            let chosen = if picture { dialog.add_filter("SVG", &["svg"]).pick_file() } else { dialog.pick_folder() };
            // The window may be gone by now; then nobody waits for the answer.
            let _ = send.send(chosen);
            ctx.request_repaint();
        });
        receive
    }
}

/// No window of its own: the path field is always shown.
#[derive(Debug, Default)]
pub struct PathField;

impl Dialogs for PathField {
    fn available(&self) -> bool {
        false
    }

    fn ask(&self, _: &PathFor, _: &egui::Context) -> Receiver<Option<PathBuf>> {
        channel().1
    }
}

/// A question under way.
pub struct Asked {
    /// What the folder is for.
    pub what: PathFor,
    answer: Receiver<Option<PathBuf>>,
}

impl Asked {
    /// A question whose answer comes on `answer`.
    #[must_use]
    pub const fn new(what: PathFor, answer: Receiver<Option<PathBuf>>) -> Self {
        Self { what, answer }
    }

    /// The answer: `None` while it is not there; `Some(None)` when there will be none.
    #[must_use]
    pub fn poll(&self) -> Option<Option<PathBuf>> {
        match self.answer.try_recv() {
            Ok(answer) => Some(answer),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => Some(None),
        }
    }
}
