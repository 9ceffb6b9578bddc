use rand::seq::SliceRandom as _;

use super::{Band, Counter, Pattern, Setup, View};
use crate::diag::{Hinted, Trouble};
use crate::limits;
use crate::mechanics::words::{colour_named, digits_only, symbols};
use crate::mechanics::{Job, Rng};

pub(super) fn lay_out(setup: &Setup, job: &Job<'_>, rng: &mut Rng) -> Hinted<View> {
    let answer = symbols(job.answer, job.lock)?;
    digits_only(&answer)?;
    if setup.bands.len() != answer.len() {
        return Err(Trouble::new(format!(
            "there are {} bands for the {} digits of the answer",
            setup.bands.len(),
            answer.len()
        ))
        .hint("name one band in `bands` for each digit"));
    }
    let (least, most) = limits::LID_MM;
    if !(least..=most).contains(&setup.lid_mm) {
        return Err(Trouble::new(format!("a lid disc of {} mm cannot be printed", setup.lid_mm))
            .hint(format!("give `lid_mm` from {least} to {most}")));
    }
    if usize::from(setup.plain) > limits::COUNTERS {
        return Err(Trouble::new(format!("{} plain counters are more than a jar holds", setup.plain))
            .hint(format!("take at most {}", limits::COUNTERS)));
    }
    let mut bands: Vec<Band> = Vec::new();
    for name in setup.bands.iter().chain(&setup.other_bands) {
        let name = name.trim().to_lowercase();
        if bands.iter().any(|band| band.name == name) {
            return Err(
                Trouble::new(format!("the band `{name}` is named twice")).hint("give each digit a band of its own")
            );
        }
        let pattern = if setup.twins {
            let next = Pattern::ALL.get(bands.len()).copied();
            Some(next.ok_or_else(|| {
                Trouble::new(format!("there are patterns for {} bands only", Pattern::ALL.len()))
                    .hint("take out some of `other_bands`, or set `twins: false`")
            })?)
        } else {
            None
        };
        bands.push(Band { colour: colour_named(&name, job.colours)?, name, pattern });
    }
    let mut counters: Vec<Counter> = answer
        .iter()
        .enumerate()
        .map(|(band, digit)| Counter { band: Some(band), text: digit.to_string(), count: 1 })
        .collect();
    // Plain counters wear every band about as often, the named ones too: a band alone then tells nothing.
    let kinds = u16::try_from(bands.len()).unwrap_or(1).max(1);
    for band in 0..kinds {
        let count = setup.plain / kinds + u16::from(band < setup.plain % kinds);
        if count > 0 {
            counters.push(Counter { band: Some(usize::from(band)), text: String::new(), count });
        }
    }
    counters.shuffle(rng);
    Ok(View {
        bands,
        counters,
        card: setup.order_card.then(|| (0..answer.len()).collect()),
        baseline: setup.baseline,
        discs: setup.discs,
        lid_mm: setup.lid_mm,
        lid_title: setup.lid_title.clone(),
        card_title: setup.card_title.clone(),
        card_text: setup.card_text.clone(),
    })
}
