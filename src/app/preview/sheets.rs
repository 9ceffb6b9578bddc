//! The sheets as they come out of the printer.

use std::sync::Arc;

use super::{Ground, Item, Job, Shown, image, laid_out, scale};
use crate::bundle::{Shift, duplex};
use crate::diag::Hinted;
use crate::face::{Audience, Piece};
use crate::print::{DocInfo, Press};
use crate::sheet::{Paper, impose_for};

/// The sheets of all three audiences, as they would be printed on this paper.
pub(super) fn sheets(
    job: &Job,
    press: &Press,
    paper: Paper,
    shown: &mut Shown,
    stop: &dyn Fn() -> bool,
    report: &dyn Fn(Shown),
) -> Hinted<()> {
    let party = laid_out(&job.kit, &job.theme, job, press)?;
    if stop() {
        return Ok(());
    }
    let info = DocInfo { title: job.kit.title.clone(), author: job.kit.author.clone(), ..DocInfo::default() };
    for audience in [Audience::Players, Audience::Hints, Audience::Host] {
        let mut pieces: Vec<Piece> = party.pieces.iter().filter(|piece| piece.audience == audience).cloned().collect();
        if audience == Audience::Players {
            let letters = party.letters(&job.theme, paper.page_size(party.large()), &|face| press.fits(face))?;
            pieces.splice(0..0, letters);
        }
        if pieces.is_empty() {
            continue;
        }
        let duplex = duplex(&job.kit, Shift::default());
        let laid = impose_for(&pieces, paper, audience, &job.kit.title, &duplex)?;
        let doc = press.sheets(&laid, &info)?;
        for page in 0..doc.page_count() {
            if stop() {
                return Ok(());
            }
            let size = doc.page_size(page).unwrap_or(paper.size());
            let raster = doc.raster(page, scale(size, job.width_px))?;
            let names: Vec<&str> = laid
                .get(page)
                .map(|sheet| sheet.placed.iter().map(|placed| placed.label.as_str()).collect())
                .unwrap_or_default();
            shown.items.push(Item {
                id: format!("{} {}", audience_word(audience), page + 1),
                label: format!("For {}, sheet {} of {}", audience_word(audience), page + 1, doc.page_count()),
                alt: names.join("; "),
                audience,
                size,
                copies: 1,
                ground: Ground::Rect,
                folds: Vec::new(),
                image: Arc::new(image(&raster)),
                overflows: Vec::new(),
                missing: Vec::new(),
                facts: None,
            });
            report(shown.clone());
        }
    }
    Ok(())
}

/// Whom an audience names.
#[must_use]
pub const fn audience_word(audience: Audience) -> &'static str {
    match audience {
        Audience::Players => "players",
        Audience::Hints => "hints",
        Audience::Host => "the host",
    }
}
