//! What is looked at, drawn by the press: the same layout that is printed, as a picture.

mod ahead;
mod beside;
mod of_kit;
mod samples;
mod sheets;
mod specimens;

use std::collections::BTreeMap;
use std::sync::Arc;
use std::time::Duration;

use eframe::egui::{Color32, ColorImage};

use of_kit::{belonging, concerns, narrowed};
use samples::Samples;
pub use samples::sample_id;
pub use sheets::audience_word;
pub use specimens::SPECIMEN;

use crate::app::session::Selection;
use crate::bundle::Opened;
use crate::diag::{Hinted, Level, Trouble};
use crate::face::{Audience, Face, Line, Outline, Piece};
use crate::files::FontBook;
use crate::ids::ThemeId;
use crate::kit::Kit;
use crate::mechanics::sample::Facts;
use crate::party::{Fits, Kept, Party};
use crate::print::{Press, Raster};
use crate::sheet::Paper;
use crate::theme::{Edition, Lettering, Loaded};
use crate::units::Size;

/// Pixels to the millimetre, least and greatest: below, print cannot be told from dirt; above, nobody looks.
const SCALE: (f64, f64) = (1.5, 14.0);
/// Pictures drawn between two reports, so that a long gallery fills from the top.
const BATCH: usize = 6;

/// What is to be drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Nothing.
    Nothing,
    /// The letter on this paper, in this edition.
    Letter(Paper, Edition),
    /// The pieces that belong to this, in this edition.
    Of(Selection, Edition),
    /// Every piece, in this edition.
    Pieces(Edition),
    /// Every sheet on this paper, in this edition.
    Sheets(Paper, Edition),
    /// A sample of every mechanic, in this edition.
    Gallery(Edition),
    /// The kit's own words in every family at hand, for this lettering role.
    Specimens(String),
    /// Every piece as it is, and beside it in another theme, with the author's choice of symbols, in this edition.
    SideBySide(ThemeId, BTreeMap<String, String>, Edition),
}

impl Wanted {
    /// The edition in which it is drawn.
    #[must_use]
    pub const fn edition(&self) -> Edition {
        match self {
            Self::Letter(_, edition)
            | Self::Of(_, edition)
            | Self::Pieces(edition)
            | Self::Sheets(_, edition)
            | Self::Gallery(edition)
            | Self::SideBySide(_, _, edition) => *edition,
            Self::Nothing | Self::Specimens(_) => Edition::Colour,
        }
    }

    /// Whether it can be looked at in another edition: all but words alone, which every edition prints alike.
    #[must_use]
    pub const fn in_editions(&self) -> bool {
        !matches!(self, Self::Nothing | Self::Specimens(_))
    }
}

/// A picture to be drawn.
pub struct Job {
    /// The kit's revision.
    pub revision: u64,
    /// The kit.
    pub kit: Arc<Kit>,
    /// Its theme.
    pub theme: Arc<Loaded>,
    /// The fonts at hand.
    pub fonts: FontBook,
    /// The play level.
    pub level: Level,
    /// What is to be drawn.
    pub wanted: Wanted,
    /// How wide a picture is shown, in pixels of the screen.
    pub width_px: u32,
    /// The piece that is looked at, to be drawn before all others.
    pub first: Option<String>,
    /// The kit as it would be exported, where another theme is held beside its own.
    pub opened: Option<Box<Opened>>,
}

/// What was drawn.
#[derive(Clone)]
pub struct Shown {
    /// The kit's revision.
    pub revision: u64,
    /// What was asked for.
    pub wanted: Wanted,
    /// The pictures, as many as are done.
    pub items: Vec<Item>,
    /// What could not be drawn.
    pub troubles: Vec<Trouble>,
    /// Whether all is done.
    pub done: bool,
}

/// A picture of one piece or sheet.
#[derive(Clone)]
pub struct Item {
    /// The piece's id, or the number of the sheet.
    pub id: String,
    /// What it is.
    pub label: String,
    /// What it shows, for those who cannot see it.
    pub alt: String,
    /// Whom it is for.
    pub audience: Audience,
    /// True size.
    pub size: Size,
    /// How many are needed.
    pub copies: u16,
    /// Whether its ground is the whole rectangle, an ellipse, or drawn by its own art.
    pub ground: Ground,
    /// Where it is folded, in millimetres.
    pub folds: Vec<Line>,
    /// The picture.
    pub image: Arc<ColorImage>,
    /// Texts that do not fit even at their least size, by their first words.
    pub overflows: Vec<String>,
    /// Characters that the fonts lack.
    pub missing: Vec<char>,
    /// What the mechanic takes of which this is a sample.
    pub facts: Option<Facts>,
}

/// The shape of the paper under a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ground {
    /// The rectangle.
    Rect,
    /// The ellipse in it.
    Round,
    /// None: the art draws it.
    Own,
}

/// A press with what it was made of: families by role, and the address of the fonts.
struct KeptPress {
    families: Vec<(String, String)>,
    fonts: usize,
    press: Press,
}

/// Draws, and keeps pictures of faces that have not changed since.
#[derive(Default)]
pub struct Painter {
    press: Option<KeptPress>,
    kept: BTreeMap<String, (Face, u64, Item)>,
    /// The group of each piece that was drawn: the puzzle to which it belongs.
    groups: BTreeMap<String, String>,
    samples: Samples,
}

impl Painter {
    /// Draws what the job asks for, in batches, unless `wait` says that something newer came within a time.
    pub fn draw(&mut self, job: &Job, wait: &dyn Fn(Duration) -> bool, report: &dyn Fn(Shown)) {
        let stop = &|| wait(Duration::ZERO);
        let mut shown = Shown {
            revision: job.revision,
            wanted: job.wanted.clone(),
            items: Vec::new(),
            troubles: Vec::new(),
            done: false,
        };
        if let Err(trouble) = self.fill(job, &mut shown, wait, report) {
            shown.troubles.push(trouble);
        }
        let stopped = stop();
        if !stopped || !shown.items.is_empty() || !shown.troubles.is_empty() {
            shown.done = !stopped;
            report(shown);
        }
    }

    fn fill(
        &mut self,
        job: &Job,
        shown: &mut Shown,
        wait: &dyn Fn(Duration) -> bool,
        report: &dyn Fn(Shown),
    ) -> Hinted<()> {
        let stop = &|| wait(Duration::ZERO);
        if job.wanted == Wanted::Nothing {
            return Ok(());
        }
        let press = self.press(job)?;
        if let Wanted::Gallery(edition) = job.wanted {
            let fits: Fits<'_> = &|face| press.fits(face);
            let samples = self.samples.of(&job.theme, &job.kit, edition, fits, stop)?;
            for (at, made) in samples.iter().enumerate() {
                if stop() {
                    return Ok(());
                }
                if at > 0 && at % BATCH == 0 {
                    report(shown.clone());
                }
                match made {
                    Ok((piece, facts)) => {
                        let first = shown.items.len();
                        self.piece(&press, piece, job.width_px, shown);
                        shown.items.iter_mut().skip(first).for_each(|item| item.facts = Some(facts.clone()));
                    }
                    Err(trouble) => shown.troubles.push(trouble.clone()),
                }
            }
            return Ok(());
        }
        if let (Wanted::SideBySide(theme, symbols, _), Some(opened)) = (&job.wanted, &job.opened) {
            return beside::beside(job, (opened, theme, symbols), &press, shown, stop, report);
        }
        if let Wanted::Specimens(role) = &job.wanted {
            return specimens::specimens(job, role, shown, stop, report);
        }
        if self.ahead(job, &press, shown, wait, report)? {
            return Ok(());
        }
        if let Wanted::Sheets(paper, _) = &job.wanted {
            return sheets::sheets(job, &press, *paper, shown, stop, report);
        }
        let party = laid_out(&narrowed(&job.kit, &job.wanted), &job.theme, job, &press)?;
        let letters;
        let pieces: Vec<&Piece> = match &job.wanted {
            Wanted::Nothing
            | Wanted::Gallery(_)
            | Wanted::SideBySide(..)
            | Wanted::Specimens(_)
            | Wanted::Sheets(..) => Vec::new(),
            Wanted::Letter(paper, _) => {
                letters = party.letters(&job.theme, paper.page_size(party.large()), &|face| press.fits(face))?;
                letters.iter().collect()
            }
            Wanted::Of(selection, _) => {
                for (anchor, trouble) in &party.troubles {
                    if concerns(anchor, &job.kit, selection) {
                        shown.troubles.push(trouble.clone());
                    }
                }
                belonging(&party.pieces, &job.kit, selection)
            }
            Wanted::Pieces(_) => party.pieces.iter().collect(),
        };
        for (at, piece) in pieces.into_iter().enumerate() {
            if stop() {
                return Ok(());
            }
            if at > 0 && at % BATCH == 0 {
                report(shown.clone());
            }
            self.piece(&press, piece, job.width_px, shown);
        }
        Ok(())
    }

    /// The press for the job's lettering, kept as long as lettering and fonts stay.
    fn press(&mut self, job: &Job) -> Hinted<Press> {
        let lettering = Lettering::new(&job.theme.theme.lettering, &job.kit.look.lettering)?;
        let families: Vec<(String, String)> =
            lettering.iter().map(|(role, family)| (role.to_owned(), family.to_owned())).collect();
        let fonts = Arc::as_ptr(job.fonts.db()) as usize;
        if let Some(kept) = &self.press
            && (&kept.families, kept.fonts) == (&families, fonts)
        {
            return Ok(kept.press.clone());
        }
        let press = Press::new(&job.fonts, &lettering)?;
        self.kept.clear();
        // How large a piece must be in large print, its lettering decides.
        self.samples = Samples::default();
        self.press = Some(KeptPress { families, fonts, press: press.clone() });
        Ok(press)
    }

    fn piece(&mut self, press: &Press, piece: &Piece, width_px: u32, shown: &mut Shown) {
        if self.groups.get(&piece.id) != Some(&piece.group) {
            self.groups.insert(piece.id.clone(), piece.group.clone());
        }
        for (side, face) in [("", Some(&piece.front)), (", back", piece.back.as_ref())] {
            let Some(face) = face else { continue };
            let key = format!("{}{side}", piece.id);
            let scale = scale(face.size, width_px);
            if let Some((old, old_scale, item)) = self.kept.get(&key)
                && *old_scale == scale.to_bits()
                && old == face
            {
                let item = Item { label: format!("{}{side}", piece.label), copies: piece.copies, ..item.clone() };
                shown.items.push(item);
                continue;
            }
            match draw_face(press, piece, face, side, scale) {
                Ok(item) => {
                    self.kept.insert(key, (face.clone(), scale.to_bits(), item.clone()));
                    shown.items.push(item);
                }
                Err(trouble) => shown.troubles.push(trouble.at(piece.label.clone())),
            }
        }
    }
}

/// A kit with the pieces of the edition that is looked at, at the sizes at which they are printed.
fn laid_out(kit: &Kit, theme: &Loaded, job: &Job, press: &Press) -> Hinted<Party> {
    let mut party = Party::in_edition(kit, theme, job.level, job.wanted.edition(), &mut Kept::default())?;
    if party.large() {
        party.enlarge(&|face| press.fits(face))?;
    }
    Ok(party)
}

fn scale(size: Size, width_px: u32) -> f64 {
    (f64::from(width_px) / size.w.get().max(1.0)).clamp(SCALE.0, SCALE.1)
}

fn draw_face(press: &Press, piece: &Piece, face: &Face, side: &str, scale: f64) -> Hinted<Item> {
    let preview = press.preview(face, scale)?;
    let mut missing: Vec<char> = preview.missing.iter().map(|glyph| glyph.text).collect();
    missing.sort_unstable();
    missing.dedup();
    Ok(Item {
        id: piece.id.clone(),
        label: format!("{}{side}", piece.label),
        alt: face.alt.clone(),
        audience: piece.audience,
        size: face.size,
        copies: piece.copies,
        ground: match face.outline {
            Outline::Rect => Ground::Rect,
            Outline::Round => Ground::Round,
            Outline::Path(_) => Ground::Own,
        },
        folds: face.folds.clone(),
        image: Arc::new(image(&preview.raster)),
        overflows: preview.fits.iter().filter(|fit| fit.overflows).map(|fit| fit.words.clone()).collect(),
        missing,
        facts: None,
    })
}

/// A raster as the toolkit wants it.
fn image(raster: &Raster) -> ColorImage {
    let size = [raster.width as usize, raster.height as usize];
    if raster.rgba.len() == size[0] * size[1] * 4 {
        ColorImage::from_rgba_unmultiplied(size, &raster.rgba)
    } else {
        ColorImage::filled([1, 1], Color32::TRANSPARENT)
    }
}
