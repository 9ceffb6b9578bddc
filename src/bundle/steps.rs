use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, PoisonError};

use rayon::prelude::*;

use super::options::{Go, Progress};
use crate::diag::{Hinted, Trouble};

/// Counts the steps of an export, tells of each, and knows whether to go on.
pub(super) struct Steps<'a> {
    tell: &'a (dyn Fn(Progress) -> Go + Sync),
    /// Held while a step is told, so that the count never goes back.
    done: Mutex<usize>,
    of: usize,
    stopped: AtomicBool,
}

impl<'a> Steps<'a> {
    pub(super) const fn new(of: usize, tell: &'a (dyn Fn(Progress) -> Go + Sync)) -> Self {
        Self { tell, done: Mutex::new(0), of, stopped: AtomicBool::new(false) }
    }

    /// Tells that a step is done.
    ///
    /// # Errors
    /// When the export is to stop.
    pub(super) fn step(&self, what: &str) -> Hinted<()> {
        let mut done = self.done.lock().unwrap_or_else(PoisonError::into_inner);
        *done += 1;
        if (self.tell)(Progress { done: *done, of: self.of, what: what.to_owned() }) == Go::Stop {
            self.stopped.store(true, Ordering::Relaxed);
        }
        self.go_on()
    }

    /// # Errors
    /// When the export is to stop.
    pub(super) fn go_on(&self) -> Hinted<()> {
        if self.stopped.load(Ordering::Relaxed) { Err(cancelled()) } else { Ok(()) }
    }

    /// Does all jobs, as many at once as the machine likes, and answers what they made in the jobs' order.
    ///
    /// # Errors
    /// The first error in the jobs' order; or when the export is to stop.
    pub(super) fn all<J: Sync, M: Send>(
        &self,
        jobs: &[J],
        work: impl Fn(&J) -> Hinted<(M, String)> + Sync,
    ) -> Hinted<Vec<M>> {
        let made: Vec<Hinted<M>> = jobs
            .par_iter()
            .map(|job| {
                self.go_on()?;
                let (made, what) = work(job)?;
                self.step(&what)?;
                Ok(made)
            })
            .collect();
        // A stop is told as such, not as whichever error a job met on its way out.
        self.go_on()?;
        made.into_iter().collect()
    }
}

/// What an export that was stopped answers.
fn cancelled() -> Trouble {
    Trouble::new("the export was stopped; nothing was left behind")
}
