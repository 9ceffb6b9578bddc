//! Heavy work, off the frame thread: one thread draws what is looked at, another proves the kit.
//!
//! Each thread has a slot for one job; a newer job takes the older one's place, so that work never queues up
//! behind typing. Results carry the revision of the kit that they belong to.

use std::path::PathBuf;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Condvar, Mutex, PoisonError};
use std::time::Duration;

use eframe::egui;

use crate::app::derived::Proven;
use crate::app::preview::{Job as PreviewJob, Painter, Shown};
use crate::checks::{Finding, Proof, Prover, theme_findings};
use crate::diag::{Hinted, Level};
use crate::files::{Disk, FontBook, Memory};
use crate::kit::Kit;
use crate::print::Press;
use crate::theme::{Lettering, Loaded};

/// How long the proof waits for the typing to pause before it starts.
const PROOF_PAUSE: Duration = Duration::from_millis(160);

/// How long nothing must be edited before the printed pieces are read as well.
const PAPER_PAUSE: Duration = Duration::from_millis(1500);

/// A kit to be proved.
pub struct ProofJob {
    /// The kit's revision.
    pub revision: u64,
    /// The kit.
    pub kit: Arc<Kit>,
    /// Its theme.
    pub theme: Arc<Loaded>,
    /// The fonts at hand.
    pub fonts: FontBook,
    /// The theme's folder on disk; none for a built-in one.
    pub theme_folder: Option<PathBuf>,
}

/// What a thread reports.
pub enum Report {
    /// Something was drawn; more of the same may follow.
    Shown(Shown),
    /// A theme was looked through.
    Looked(Vec<Finding>),
    /// A kit of this revision was proved.
    Proved(u64, Box<Hinted<Proven>>),
}

/// The two threads. They end when this is dropped.
pub struct Worker {
    preview: Arc<Newest<PreviewJob>>,
    proof: Arc<Newest<ProofJob>>,
    reports: Receiver<Report>,
}

impl Worker {
    /// Starts the threads; each asks `ctx` for a frame when it has something to show.
    #[must_use]
    pub fn start(ctx: &egui::Context) -> Self {
        let (send, reports) = channel();
        let preview = Arc::new(Newest::default());
        let proof = Arc::new(Newest::default());
        {
            let (slot, send, ctx) = (preview.clone(), send.clone(), ctx.clone());
            std::thread::spawn(move || draw_all(&slot, &send, &ctx));
        }
        {
            let (slot, ctx) = (proof.clone(), ctx.clone());
            std::thread::spawn(move || prove_all(&slot, &send, &ctx));
        }
        Self { preview, proof, reports }
    }

    /// Asks for a picture of what is looked at.
    pub fn draw(&self, job: PreviewJob) {
        self.preview.put(job);
    }

    /// Asks for a proof.
    pub fn prove(&self, job: ProofJob) {
        self.proof.put(job);
    }

    /// What has been reported since the last time.
    pub fn reports(&self) -> impl Iterator<Item = Report> + '_ {
        self.reports.try_iter()
    }
}

impl Drop for Worker {
    fn drop(&mut self) {
        self.preview.close();
        self.proof.close();
    }
}

fn draw_all(slot: &Newest<PreviewJob>, send: &Sender<Report>, ctx: &egui::Context) {
    let mut painter = Painter::default();
    while let Some(job) = slot.wait() {
        painter.draw(&job, &|pause| slot.newer_within(pause), &|shown| {
            // The window may be gone; then the slot is closed and the loop ends.
            let _ = send.send(Report::Shown(shown));
            ctx.request_repaint();
        });
    }
}

fn prove_all(slot: &Newest<ProofJob>, send: &Sender<Report>, ctx: &egui::Context) {
    let mut standing: Option<Standing> = None;
    let mut looked: Option<Arc<Loaded>> = None;
    while let Some(job) = slot.wait() {
        if slot.newer_within(PROOF_PAUSE) {
            continue;
        }
        let proof = Standing::renewed(&mut standing, &job)
            .and_then(|at| at.prover.prove(&job.kit, &job.theme, Some(&at.press), &Level::ALL));
        let wants_mends = proof.as_ref().is_ok_and(Proof::wants_mends);
        let proven = proof.map(|proof| Proven { mending: wants_mends, ..Proven::new(&job.kit, proof) });
        let _ = send.send(Report::Proved(job.revision, Box::new(proven)));
        if looked.as_ref().is_none_or(|theme| !Arc::ptr_eq(theme, &job.theme)) {
            // A built-in theme has its licences beside its fonts; a test holds it to that.
            let found = match &job.theme_folder {
                Some(folder) => {
                    let name = folder.file_name().and_then(|name| name.to_str());
                    theme_findings(&job.theme, &job.fonts, &Disk::new(folder), name)
                }
                None => theme_findings(&job.theme, &job.fonts, &Memory::new(), None),
            };
            let _ = send.send(Report::Looked(found));
            looked = Some(job.theme.clone());
        }
        ctx.request_repaint();
        // What is wrong is shown at once; how to mend it may take longer to find.
        if wants_mends {
            let proof = Standing::renewed(&mut standing, &job)
                .and_then(|at| at.prover.prove(&job.kit, &job.theme, Some(&at.press), &Level::ALL));
            let proven = proof.map(|mut proof| {
                proof.mend(&job.kit, &job.theme, &|| slot.newer_within(Duration::ZERO));
                Proven::new(&job.kit, proof)
            });
            if slot.newer_within(Duration::ZERO) {
                continue;
            }
            let _ = send.send(Report::Proved(job.revision, Box::new(proven)));
            ctx.request_repaint();
        }
        // The paper is read when nothing is being edited: it takes as long again.
        if slot.newer_within(PAPER_PAUSE) {
            continue;
        }
        let proof = Standing::renewed(&mut standing, &job)
            .and_then(|at| at.prover.prove_printed(&job.kit, &job.theme, &at.press, &Level::ALL));
        let proven = proof.map(|mut proof| {
            proof.mend(&job.kit, &job.theme, &|| slot.newer_within(Duration::ZERO));
            Proven::new(&job.kit, proof)
        });
        let _ = send.send(Report::Proved(job.revision, Box::new(proven)));
        ctx.request_repaint();
    }
}

/// What proofs share from edit to edit, while theme, fonts and lettering stay.
struct Standing {
    theme: Arc<Loaded>,
    fonts: FontBook,
    lettering: Lettering,
    press: Press,
    prover: Prover,
}

impl Standing {
    /// What stands, made anew where the job has another theme, other fonts or another lettering.
    fn renewed<'a>(standing: &'a mut Option<Self>, job: &ProofJob) -> Hinted<&'a mut Self> {
        let lettering = Lettering::new(&job.theme.theme.lettering, &job.kit.look.lettering)?;
        let old = standing.take();
        let kept =
            old.filter(|at| Arc::ptr_eq(&at.theme, &job.theme) && at.fonts.is(&job.fonts) && at.lettering == lettering);
        let new = match kept {
            Some(kept) => kept,
            // Without a press nothing can be set, so that comes before all other findings.
            None => Self {
                press: Press::new(&job.fonts, &lettering)?,
                theme: job.theme.clone(),
                fonts: job.fonts.clone(),
                lettering,
                prover: Prover::default(),
            },
        };
        Ok(standing.insert(new))
    }
}

/// A slot for one job.
struct Newest<J> {
    state: Mutex<State<J>>,
    changed: Condvar,
}

struct State<J> {
    job: Option<J>,
    closed: bool,
}

impl<J> Default for Newest<J> {
    fn default() -> Self {
        Self { state: Mutex::new(State { job: None, closed: false }), changed: Condvar::new() }
    }
}

impl<J> Newest<J> {
    fn put(&self, job: J) {
        self.state.lock().unwrap_or_else(PoisonError::into_inner).job = Some(job);
        self.changed.notify_all();
    }

    fn close(&self) {
        self.state.lock().unwrap_or_else(PoisonError::into_inner).closed = true;
        self.changed.notify_all();
    }

    /// The next job; none when the slot is closed.
    fn wait(&self) -> Option<J> {
        let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        loop {
            if state.closed {
                return None;
            }
            if let Some(job) = state.job.take() {
                return Some(job);
            }
            state = self.changed.wait(state).unwrap_or_else(PoisonError::into_inner);
        }
    }

    /// Waits for a newer job, or for there to be none any more, but no longer than this.
    fn newer_within(&self, pause: Duration) -> bool {
        let state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
        let (state, _) = self
            .changed
            .wait_timeout_while(state, pause, |state| !state.closed && state.job.is_none())
            .unwrap_or_else(PoisonError::into_inner);
        state.closed || state.job.is_some()
    }
}
