use std::collections::BTreeMap;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use eframe::egui;

use crate::bundle::{Opened, redone};
use crate::diag::{Hinted, Trouble};
use crate::ids::ThemeId;
use crate::kit::edit::{Edit, apply_all, between};
use crate::propose::{Wish, propose};

/// A kit on its way into another theme.
pub struct Done {
    /// The step that puts it there.
    pub edits: Vec<Edit>,
    /// What was done, in a sentence or two.
    pub words: String,
    /// How many places still speak of the old season.
    pub left: usize,
}

/// A redress under way, on a thread of its own: finding codes takes a while.
pub struct Redressing {
    /// The revision of the kit from which it starts.
    pub revision: u64,
    done: Receiver<Hinted<Done>>,
}

impl Redressing {
    /// Starts to put the kit into another theme, with the author's choice of symbols, and with new codes when that
    /// is asked for.
    #[must_use]
    pub fn start(
        ctx: &egui::Context,
        revision: u64,
        opened: Opened,
        (theme, symbols): (ThemeId, BTreeMap<String, String>),
        codes: bool,
    ) -> Self {
        let (send, done) = channel();
        let ctx = ctx.clone();
        std::thread::spawn(move || {
            // The window may be gone by now.
            let _ = send.send(redress(&opened, &theme, &symbols, codes));
            ctx.request_repaint();
        });
        Self { revision, done }
    }

    /// How it ended; none while it runs.
    #[must_use]
    pub fn poll(&self) -> Option<Hinted<Done>> {
        match self.done.try_recv() {
            Ok(done) => Some(done),
            Err(TryRecvError::Empty) => None,
            Err(TryRecvError::Disconnected) => {
                Some(Err(Trouble::new("the change of theme broke off").hint("try again")))
            }
        }
    }
}

fn redress(opened: &Opened, theme: &ThemeId, symbols: &BTreeMap<String, String>, codes: bool) -> Hinted<Done> {
    let fresh = redone(opened, theme, false, symbols)?;
    let mut kit = fresh.opened.kit.clone();
    let mut words = format!("The kit wears {} now.", fresh.opened.theme.theme.name);
    if codes {
        let wish = Wish { seed: kit.seed.wrapping_add(1), ..Wish::default() };
        match propose(&kit, &fresh.opened.theme, &wish) {
            Ok(proposal) => {
                let edits = proposal.edits(&kit, &fresh.opened.theme);
                apply_all(&mut kit, edits);
                words.push_str(&match proposal.changes.len() {
                    1 => " One lock has a new code.".to_owned(),
                    changed => format!(" {changed} locks have new codes."),
                });
            }
            Err(trouble) => words.push_str(&format!(" The codes stay: {}.", trouble.message)),
        }
    }
    for trouble in &fresh.troubles {
        words.push_str(&format!(" Not taken over: {}.", trouble.message));
    }
    let left = fresh.leftovers.len();
    words.push_str(&match left {
        0 => " Nothing of the old season is left.".to_owned(),
        1 => " One place still speaks of the old season.".to_owned(),
        left => format!(" {left} places still speak of the old season."),
    });
    Ok(Done { edits: between(&opened.kit, &kit), words, left })
}
