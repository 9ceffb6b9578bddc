use std::collections::{BTreeMap, BTreeSet};

use super::manifest::Made;
use super::names::piece_names;
use crate::diag::{Hinted, Level};
use crate::face::{Audience, Face, Piece};
use crate::files::VPath;
use crate::kit::Kit;
use crate::party::Party;
use crate::print::Press;
use crate::sheet::Paper;
use crate::theme::{Edition, Loaded};

/// Pixels in a millimetre of the pictures: 150 dots to the inch, enough for a screen; the SVG beside each
/// picture prints at any size.
const PX_PER_MM: f64 = 150.0 / 25.4;

/// One picture to be made.
pub(super) struct Job {
    name: String,
    face: Face,
    level: Option<Level>,
    paper: Option<Paper>,
    edition: Edition,
}

impl Job {
    pub(super) fn told(&self) -> String {
        format!("picture {}", self.name)
    }
}

/// The pictures of all pieces for guests. A piece that every exported level has, and has alike, is made once, under its
/// plain name; else each level has its own, named after it. The letter follows the paper.
pub(super) fn jobs(kit: &Kit, theme: &Loaded, press: &Press, parties: &[&Party], papers: &[Paper]) -> Hinted<Vec<Job>> {
    let mut letters = Vec::new();
    for party in parties {
        for paper in papers {
            let pages = party.letters(theme, paper.page_size(party.large()), &|face| press.fits(face))?;
            letters.extend(pages.into_iter().map(|page| (*paper, party.level, page)));
        }
    }
    let pieces = || {
        parties
            .iter()
            .flat_map(|party| party.pieces.iter().map(|piece| (party.level, piece)))
            .filter(|(_, piece)| piece.audience == Audience::Players)
    };
    let names = piece_names(kit, pieces().map(|(_, piece)| piece));
    let mut by_id: BTreeMap<&str, Vec<(Level, &Piece)>> = BTreeMap::new();
    for (level, piece) in pieces() {
        by_id.entry(&piece.id).or_default().push((level, piece));
    }
    let mut jobs = Vec::new();
    for (id, versions) in by_id {
        let name = names.get(id).map_or(id, String::as_str);
        add(&mut jobs, (name, parties.len()), None, &versions);
    }
    for paper in papers {
        let own = || letters.iter().filter(|(on, _, _)| on == paper);
        let ids: BTreeSet<&str> = own().map(|(_, _, piece)| piece.id.as_str()).collect();
        for id in ids {
            let versions: Vec<(Level, &Piece)> =
                own().filter(|(_, _, piece)| piece.id == id).map(|(_, level, piece)| (*level, piece)).collect();
            add(&mut jobs, (&format!("{id}-{}", paper.word()), parties.len()), Some(*paper), &versions);
        }
    }
    if let Some(edition) = parties.first().map(|party| party.edition()) {
        for job in &mut jobs {
            job.name.insert_str(0, edition.in_names());
            job.edition = edition;
        }
    }
    jobs.sort_by(|a, b| a.name.cmp(&b.name));
    Ok(jobs)
}

/// Adds the versions of one piece; `levels` is how many are exported.
fn add(jobs: &mut Vec<Job>, (name, levels): (&str, usize), paper: Option<Paper>, versions: &[(Level, &Piece)]) {
    let Some((first_level, first)) = versions.first() else { return };
    let everywhere = versions.iter().map(|(level, _)| level).collect::<BTreeSet<_>>().len() == levels;
    let alike = versions.iter().all(|(_, piece)| piece.front == first.front && piece.back == first.back);
    let made: Vec<(Option<Level>, String, &Piece)> = if alike && everywhere {
        let level = (levels == 1).then_some(*first_level);
        vec![(level, name.to_owned(), first)]
    } else {
        versions.iter().map(|(level, piece)| (Some(*level), format!("{name}-{}", level.word()), *piece)).collect()
    };
    for (level, name, piece) in made {
        if let Some(back) = &piece.back {
            jobs.push(Job { name: format!("{name}-back"), face: back.clone(), level, paper, edition: Edition::Colour });
        }
        jobs.push(Job { name, face: piece.front.clone(), level, paper, edition: Edition::Colour });
    }
}

/// A piece as PNG and as SVG, letters as outlines.
pub(super) fn pictures(job: &Job, press: &Press) -> Hinted<[Made; 2]> {
    let set = press.face(&job.face).map_err(|trouble| trouble.at(format!("piece {}", job.name)))?;
    let made = |end: &str, bytes: Vec<u8>| {
        Ok(Made {
            path: VPath::new("pieces")?.join(&format!("{}.{end}", job.name))?,
            bytes,
            pages: None,
            paper: job.paper,
            level: job.level,
            edition: Some(job.edition),
            audience: "players",
            sheets: Vec::new(),
        })
    };
    Ok([made("png", set.raster(PX_PER_MM)?.png()?)?, made("svg", set.svg().into_bytes())?])
}
