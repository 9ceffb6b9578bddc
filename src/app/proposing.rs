use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use eframe::egui;

use crate::diag::{Hinted, Trouble};
use crate::kit::Kit;
use crate::propose::{Proposal, Wish, propose};
use crate::theme::Loaded;

/// A search for codes under way, on a thread of its own.
pub struct Proposing {
    revision: u64,
    found: Receiver<Hinted<Proposal>>,
}

impl Proposing {
    /// Starts a search for the kit of this revision.
    #[must_use]
    pub fn start(ctx: &egui::Context, revision: u64, kit: Kit, theme: Arc<Loaded>, wish: Wish) -> Self {
        let (send, found) = channel();
        let ctx = ctx.clone();
        std::thread::spawn(move || {
            // The window may be gone by now.
            let _ = send.send(propose(&kit, &theme, &wish));
            ctx.request_repaint();
        });
        Self { revision, found }
    }

    /// What was found, and for which revision; none while it runs.
    #[must_use]
    pub fn poll(&self) -> Option<(u64, Hinted<Proposal>)> {
        match self.found.try_recv() {
            Ok(found) => Some((self.revision, found)),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => {
                Some((self.revision, Err(Trouble::new("the search broke off").hint("try another seed"))))
            }
        }
    }
}
