use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::sync::{Arc, Mutex, PoisonError};

use eframe::egui;

use crate::bundle::{Go, Opened, Options, Progress, export};
use crate::diag::Trouble;

/// How an export ended.
pub enum Outcome {
    /// Written; where to look.
    Done(String),
    /// Stopped by the author.
    Stopped,
    /// Failed; nothing was left behind.
    Failed(Trouble),
}

/// An export under way, on a thread of its own: the kit can be edited meanwhile.
pub struct Running {
    outcome: Receiver<Outcome>,
    progress: Arc<Mutex<Progress>>,
    stop: Arc<AtomicBool>,
}

impl Running {
    /// Starts an export of the kit as it stands.
    #[must_use]
    pub fn start(ctx: &egui::Context, opened: Opened, options: Options) -> Self {
        let (send, outcome) = channel();
        let progress = Arc::new(Mutex::new(Progress { done: 0, of: 1, what: "starting".into() }));
        let stop = Arc::new(AtomicBool::new(false));
        let (shared, flag, ctx) = (progress.clone(), stop.clone(), ctx.clone());
        std::thread::spawn(move || {
            let told = |now: Progress| {
                *shared.lock().unwrap_or_else(PoisonError::into_inner) = now;
                ctx.request_repaint();
                if flag.load(Ordering::Relaxed) { Go::Stop } else { Go::On }
            };
            let result = export(&opened, &options, &told);
            let outcome = match result {
                Ok(exported) => Outcome::Done(format!("Exported. Look in {}.", exported.folder.display())),
                Err(_) if flag.load(Ordering::Relaxed) => Outcome::Stopped,
                Err(trouble) => Outcome::Failed(trouble),
            };
            // The window may be gone by now.
            let _ = send.send(outcome);
            ctx.request_repaint();
        });
        Self { outcome, progress, stop }
    }

    /// How far it has come.
    #[must_use]
    pub fn progress(&self) -> Progress {
        self.progress.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// Asks it to stop.
    pub fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// How it ended; none while it runs.
    #[must_use]
    pub fn poll(&self) -> Option<Outcome> {
        match self.outcome.try_recv() {
            Ok(outcome) => Some(outcome),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => {
                Some(Outcome::Failed(Trouble::new("the export broke off").hint("try again; nothing was left behind")))
            }
        }
    }
}
