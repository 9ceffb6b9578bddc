use std::collections::BTreeSet;

use super::{Band, View};
use crate::kit::LockKind;
use crate::limits;
use crate::readings::tokens::{Cue, Mark, Order, read};
use crate::readings::{Budget, Readings};
use crate::theme::colour::Eyes;

/// The numbered counters by the card, as each kind of eyes would match the bands; every answer that any of them
/// could defend.
pub(super) fn readings(view: &View, lock: &LockKind, budget: &mut Budget) -> Readings {
    let numbered: Vec<(Option<&Band>, Mark)> = view
        .counters
        .iter()
        .filter(|counter| !counter.text.is_empty())
        .map(|counter| {
            let band = counter.band.and_then(|band| view.bands.get(band));
            let label = band.map_or_else(|| "the one without a band".into(), |band| format!("the {} one", band.name));
            (band, Mark::new(label, counter.text.as_str()).loose(!view.baseline))
        })
        .collect();
    let marks: Vec<Mark> = numbered.iter().map(|(_, mark)| mark.clone()).collect();
    let mut all = Readings::default();
    let mut remarks = BTreeSet::new();
    let Some(card) = &view.card else {
        let mut found = read(&marks, &Order::open(), lock, budget);
        found.remarks.push("no card says in which order the numbered ones are read".into());
        return found;
    };
    if numbered.iter().any(|(band, _)| band.is_none()) {
        remarks.insert("a numbered counter has no band".to_owned());
    }
    for eyes in Eyes::ALL {
        let cues = card.iter().filter_map(|band| view.bands.get(*band)).map(|wanted| {
            let seen = |index: &usize| {
                numbered.get(*index).and_then(|(band, _)| *band).is_some_and(|band| alike(eyes, band, wanted))
            };
            let mut fit: Vec<usize> = (0..numbered.len()).filter(seen).collect();
            if fit.is_empty() {
                // Nothing wears this band; a guest takes what wears none.
                fit = (0..numbered.len())
                    .filter(|index| numbered.get(*index).is_some_and(|(b, _)| b.is_none()))
                    .collect();
            }
            Cue { label: wanted.name.clone(), marks: fit }
        });
        let found = read(&marks, &Order::Cued(cues.collect()), lock, budget);
        for reading in found.list {
            let seen = if eyes == Eyes::Full { String::new() } else { format!(" ({})", eyes.words()) };
            all.add(lock, &reading.answer, format!("{}{seen}", reading.why));
        }
        all.more |= found.more;
        all.unproven |= found.unproven;
    }
    all.remarks = remarks.into_iter().collect();
    all
}

/// Whether these eyes may take one band for the other: no pattern tells them apart, and the colours are close.
fn alike(eyes: Eyes, a: &Band, b: &Band) -> bool {
    a.pattern == b.pattern && (a.name == b.name || eyes.difference(a.colour, b.colour) < limits::BANDS_APART)
}
