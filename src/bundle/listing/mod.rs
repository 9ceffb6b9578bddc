//! The listing: what a kit is sold by. A cover, contact sheets, a description, terms of use, credits.
//!
//! Nothing is in it that is not in the kit, and nothing that gives an answer or a hint away.

mod about;
mod contact;
mod cover;
mod credits;
mod markdown;
mod secrets;
mod veil;

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::Serialize;

use super::Opened;
use super::documents::info;
use super::guide::{Source, minutes};
use super::manifest::Made;
use crate::checks::LevelProof;
use crate::diag::{Hinted, Level};
use crate::files::VPath;
use crate::prep::PrepPlan;
use crate::print::Press;
use crate::sheet::Paper;
use crate::theme::Edition;
use secrets::Secrets;
use veil::Shown;

/// The folder, and whom its files are for.
const FOLDER: &str = "listing";
/// Pixels in a millimetre of the pictures: 1,920 across, enough for any shop's page (common practice, no source).
const PX_PER_MM: f64 = 8.0;

/// A listing in the making: what it shows. What it says is known when the rest of the bundle is.
pub(super) struct Listing<'a> {
    opened: &'a Opened,
    level: &'a LevelProof,
    levels: Vec<Level>,
    editions: &'a [Edition],
    secrets: Secrets,
    shown: Vec<Shown>,
    cells: Vec<contact::Cell>,
    pages: Vec<Vec<contact::Laid>>,
    /// The cover for the printed page, where it is 136 mm wide: half as many pixels are 180 dots to the inch.
    small: OnceLock<Vec<u8>>,
}

/// A picture of a listing.
#[derive(Clone, Copy, Debug)]
pub(super) enum Picture {
    /// The cover.
    Cover,
    /// A contact sheet, counted from 0.
    Contact(usize),
}

impl<'a> Listing<'a> {
    /// What can be shown of a kit at these levels of one edition; the standard level is shown where it is among them.
    ///
    /// # Errors
    /// When there is no level, or the theme's art cannot be read.
    pub(super) fn new(
        opened: &'a Opened,
        proven: &[&'a LevelProof],
        editions: &'a [Edition],
        paper: Paper,
    ) -> Hinted<Option<Self>> {
        let standard = proven.iter().find(|level| level.party.level == Level::Standard);
        let Some(level) = standard.or(proven.first()).copied() else { return Ok(None) };
        let secrets = Secrets::of(proven);
        let letter = level.party.letter(&opened.theme, paper.safe_size())?;
        let shown = veil::shown(&opened.kit, &opened.theme, level, &letter, &secrets)?;
        let cells = contact::cells(&shown);
        let sizes: Vec<_> = cells.iter().map(|cell| cell.size).collect();
        let levels = proven.iter().map(|level| level.party.level).collect();
        Ok(Some(Self {
            opened,
            level,
            levels,
            editions,
            secrets,
            shown,
            cells,
            pages: contact::lay(&sizes),
            small: OnceLock::new(),
        }))
    }

    /// The level that it shows.
    pub(super) const fn level(&self) -> &'a LevelProof {
        self.level
    }

    /// Its pictures.
    pub(super) fn pictures(&self) -> Vec<Picture> {
        std::iter::once(Picture::Cover).chain((0..self.pages.len()).map(Picture::Contact)).collect()
    }

    /// Makes a picture.
    ///
    /// # Errors
    /// When a piece cannot be set.
    pub(super) fn picture(&self, picture: Picture, press: &Press) -> Hinted<Made> {
        let page = match picture {
            Picture::Cover => self.cover(press)?,
            Picture::Contact(n) => {
                let palette = &self.level.party.palette;
                let laid = self.pages.get(n).map(Vec::as_slice).unwrap_or_default();
                let divider = self.opened.theme.ornament("divider").map(AsRef::as_ref);
                let head = contact::Head { title: &self.level.party.script.title, divider };
                contact::page(laid, &self.cells, &self.shown, &head, palette, press)?
            }
        };
        let name = match picture {
            Picture::Cover => "cover.png".to_owned(),
            Picture::Contact(n) => format!("contact-sheet-{}.png", n + 1),
        };
        let raster = page.raster(press, PX_PER_MM)?;
        if matches!(picture, Picture::Cover) {
            let small = raster.halved().png()?;
            self.small.get_or_init(|| small);
        }
        made(&name, raster.png()?)
    }

    fn cover(&self, press: &Press) -> Hinted<contact::Page> {
        let kit = &self.opened.kit;
        let (least, most) = kit.players;
        let guests = if least == most { format!("{least} guests") } else { format!("{least} to {most} guests") };
        let ages = format!("from {} years", kit.ages.0);
        let puzzles = match kit.puzzles.len() {
            1 => "1 puzzle".to_owned(),
            count => format!("{count} puzzles"),
        };
        let mut lines = vec![
            format!("{guests}, {ages}"),
            format!("about {} of play, {puzzles}", minutes(f64::from(kit.minutes_at(self.level.party.level)))),
        ];
        if !kit.author.trim().is_empty() {
            lines.push(format!("by {}", kit.author.trim()));
        }
        lines.retain(|line| !self.secrets.tells(line));
        cover::cover(&self.level.party, &self.opened.theme, &self.shown, &lines, press)
    }

    /// What it says: as Markdown, and as pages for each paper. `files` are the other files of the bundle, `prep` what the
    /// host does at its level.
    ///
    /// # Errors
    /// When the pages cannot be set.
    pub(super) fn words(&self, papers: &[Paper], prep: &PrepPlan, files: &[Made], press: &Press) -> Hinted<Vec<Made>> {
        let (party, flow) = (&self.level.party, &self.level.flow);
        let opened = self.opened;
        let paper = Paper::A4;
        let source = Source { opened, party, flow, prep, rehearsal: None, paper, groups: 1, forced: &[], files: &[] };
        let about = about::about(&source, self.level, (&self.levels, self.editions), files, &self.secrets);
        let mut found = vec![made("description.md", markdown::markdown(&about).into_bytes())?];
        let cover = match self.small.get() {
            Some(small) => small.clone(),
            None => self.cover(press)?.raster(press, PX_PER_MM)?.halved().png()?,
        };
        let colours = party.palette.iter().map(|(role, colour)| (role, colour.to_string())).collect();
        let data = serde_json::to_value(Page { about: &about, colours })
            .map_err(|error| crate::diag::Trouble::new(format!("cannot write the listing: {error}")))?;
        let info = info(opened, format!("{}: about this kit", party.script.title));
        let pictures = [("cover.png", cover)];
        for paper in papers {
            let set = press.pages_with("listing.typ", &data, &pictures, *paper, &info)?;
            let name = format!("{}-about-{}.pdf", opened.kit.id, paper.word());
            let pages = Some(set.page_count());
            found.push(Made { pages, paper: Some(*paper), ..made(&name, set.pdf()?)? });
        }
        Ok(found)
    }
}

/// What the template of the pages reads.
#[derive(Serialize)]
struct Page<'a> {
    about: &'a about::About,
    colours: BTreeMap<&'static str, String>,
}

fn made(name: &str, bytes: Vec<u8>) -> Hinted<Made> {
    let path = VPath::new(FOLDER)?.join(name)?;
    Ok(Made { path, bytes, pages: None, paper: None, level: None, edition: None, audience: FOLDER, sheets: Vec::new() })
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::bundle::{DEMO_KITS, open_demo, press_of, prove};
    use crate::face::{Audience, Piece};
    use crate::readings::same_answer;

    /// The pieces that stand on contact sheets as they are, of each demo kit at every level.
    fn each(look: impl Fn(&Listing<'_>, &LevelProof, &[&Piece])) {
        for name in DEMO_KITS {
            let opened = open_demo(name).unwrap();
            let press = press_of(&opened).unwrap();
            let proof = prove(&opened, &press, &Level::ALL).unwrap();
            let all: Vec<&LevelProof> = proof.levels.iter().collect();
            let listing = Listing::new(&opened, &all, &[Edition::Colour], Paper::A4).unwrap().unwrap();
            let bare = |piece: &&Piece| listing.shown.iter().any(|shown| !shown.veiled && shown.piece == piece.id);
            let shown: Vec<&Piece> = listing.level.party.pieces.iter().filter(bare).collect();
            assert!(shown.len() > 4, "{name} shows {} pieces", shown.len());
            look(&listing, listing.level, &shown);
        }
    }

    #[test]
    fn what_is_shown_solves_no_puzzle() {
        each(|listing, level, shown| {
            let (kit, theme) = (&listing.opened.kit, &listing.opened.theme);
            let ids: BTreeSet<&str> = shown.iter().map(|piece| piece.id.as_str()).collect();
            for puzzle in &kit.puzzles {
                let sides = level.set.iter().filter(|set| set.paper.is_none()).flat_map(|set| &set.printed);
                let mine = |id: &str| level.party.piece(id).is_some_and(|piece| piece.group == puzzle.id.as_str());
                let sides: Vec<_> =
                    sides.filter(|side| mine(&side.piece) && ids.contains(side.piece.as_str())).cloned().collect();
                if sides.is_empty() {
                    continue;
                }
                let answer = &level.party.puzzle(&puzzle.id).unwrap().answer;
                if let Some(Ok(found)) = level.party.reread(kit, theme, puzzle, sides) {
                    let told = found.list.iter().any(|reading| same_answer(&reading.answer, answer));
                    assert!(!told && !found.more, "{} is told by the listing", puzzle.id);
                }
            }
        });
    }

    #[test]
    fn nothing_of_the_host_and_no_hint_is_shown() {
        each(|listing, _, shown| {
            let card = listing.opened.kit.finish.card.as_str();
            for piece in shown {
                assert!(piece.audience == Audience::Players && piece.id != card, "{} is shown", piece.id);
            }
            for piece in &listing.shown {
                let words: Vec<String> = piece.face.runs().map(|run| run.text.text()).collect();
                assert!(!listing.secrets.tells(&words.join(" ")), "{} tells", piece.label);
                assert!(!listing.secrets.tells(&piece.label), "{} tells", piece.label);
                assert_eq!(piece.face.alt == "Kept for the party", piece.veiled, "{}", piece.label);
            }
            assert!(listing.shown.iter().any(|piece| piece.veiled && piece.label == "Hint tokens"));
        });
    }
}
