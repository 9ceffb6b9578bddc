use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use eframe::egui;

use crate::app::App;
use crate::app::bars::Bar;
use crate::app::change::Change;
use crate::diag::{Hinted, Trouble};
use crate::kit::Kit;
use crate::kit::edit::Edit;
use crate::propose::{Proposal, Wish, propose};
use crate::theme::Loaded;

/// What a search found: the codes, and the step that puts them in.
type Found = (Proposal, Vec<Edit>);

/// A search for codes under way, on a thread of its own.
pub struct Proposing {
    revision: u64,
    found: Receiver<Hinted<Found>>,
}

impl Proposing {
    /// Starts a search for the kit of this revision.
    #[must_use]
    pub fn start(ctx: &egui::Context, revision: u64, kit: Kit, theme: Arc<Loaded>, wish: Wish) -> Self {
        let (send, found) = channel();
        let ctx = ctx.clone();
        std::thread::spawn(move || {
            let found = propose(&kit, &theme, &wish).map(|proposal| {
                let edits = proposal.edits(&kit, &theme);
                (proposal, edits)
            });
            // The window may be gone by now.
            let _ = send.send(found);
            ctx.request_repaint();
        });
        Self { revision, found }
    }

    /// What was found, and for which revision; none while it runs.
    #[must_use]
    pub fn poll(&self) -> Option<(u64, Hinted<Found>)> {
        match self.found.try_recv() {
            Ok(found) => Some((self.revision, found)),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => {
                Some((self.revision, Err(Trouble::new("the search broke off").hint("try another seed"))))
            }
        }
    }
}

impl App {
    pub(super) fn propose(&mut self, ctx: &egui::Context, wish: Wish) {
        if self.proposing.is_none() {
            self.bar = Bar::None;
            let (kit, theme) = (self.doc.kit.clone(), self.doc.theme.clone());
            self.proposing = Some(Proposing::start(ctx, self.doc.revision, kit, theme, wish));
            self.session.proposing = true;
        }
    }

    /// Puts the codes in that were found, as one step; not into a kit that has changed meanwhile.
    pub(super) fn take_codes(&mut self, ctx: &egui::Context) {
        let Some((revision, found)) = self.proposing.as_ref().and_then(Proposing::poll) else { return };
        self.proposing = None;
        self.session.proposing = false;
        self.bar = match found {
            Err(trouble) => Bar::Trouble(trouble),
            Ok(_) if revision != self.doc.revision => {
                Bar::Done("The kit has changed while codes were looked for; nothing was put in. Try again.".into())
            }
            Ok((proposal, edits)) => {
                let edits = edits.into_iter().map(Change::Kit).collect();
                if self.history.step(&mut self.doc, edits) {
                    self.changed(ctx);
                }
                Bar::Done(self.told_codes(&proposal))
            }
        };
    }

    /// A proposal in words.
    fn told_codes(&self, proposal: &Proposal) -> String {
        let title = |id| self.doc.kit.puzzle(id).map_or_else(String::new, |puzzle| puzzle.title.clone());
        let many = proposal.changes.len();
        let mut words = match many {
            0 => "No code was changed.".to_owned(),
            1 => "One code is new; Undo takes it back.".to_owned(),
            _ => format!("{many} codes are new; Undo takes them back."),
        };
        for kept in &proposal.kept {
            words.push_str(&format!(" \"{}\" stays: {}.", title(&kept.puzzle), kept.why));
        }
        words
    }
}
