use super::manifest::{Made, SheetOf};
use super::open::Opened;
use super::options::Shift;
use super::printer_test;
use crate::diag::Hinted;
use crate::face::Audience;
use crate::files::VPath;
use crate::kit::{Day, Flip, Kit};
use crate::limits;
use crate::party::Party;
use crate::print::{DocInfo, Press};
use crate::sheet::{Duplex, Paper, Sheet, Turn, impose_for};
use crate::theme::{Edition, Loaded};
use crate::units::Mm;

/// The language of the program's fixed words (BCP 47), those of the guide among them.
const LANGUAGE: &str = "en";

/// One document of sheets to be made.
#[derive(Clone, Copy)]
pub(super) struct Job<'a> {
    pub(super) party: &'a Party,
    pub(super) paper: Paper,
    pub(super) audience: Audience,
    pub(super) shift: Shift,
    pub(super) groups: u16,
}

/// How the kit's sheets with backs are printed, for a printer with this shift.
#[must_use]
pub fn duplex(kit: &Kit, shift: Shift) -> Duplex {
    let turn = match kit.making.flip {
        Flip::LongEdge => Turn::LongEdge,
        Flip::ShortEdge => Turn::ShortEdge,
    };
    let mm = |tenths: i16| Mm::new(f64::from(tenths) / 10.0);
    Duplex { turn, right: mm(shift.right), down: mm(shift.down) }
}

/// The folder of an audience and the word for it in a manifest.
pub(super) const fn folder(audience: Audience) -> &'static str {
    match audience {
        Audience::Players => "players",
        Audience::Hints => "hints",
        Audience::Host => "host",
    }
}

/// What a document of the kit says of itself under this title.
pub(super) fn info(opened: &Opened, title: String) -> DocInfo {
    DocInfo {
        title,
        author: opened.kit.author.clone(),
        language: LANGUAGE.to_owned(),
        day: opened.kit.revision.day.map(Day::parts),
        ..DocInfo::default()
    }
}

/// A file's name: whose it is and what it is laid out for, so that nobody prints the wrong one.
pub(super) fn file_name(kit: &Kit, what: &str, party: &Party, paper: Paper) -> String {
    let id = &kit.id;
    let (edition, level, paper) = (party.edition().in_names(), party.level.word(), paper.word());
    let what = if what.is_empty() { String::new() } else { format!("{what}-") };
    format!("{id}-{what}{edition}{level}-{paper}.pdf")
}

/// What a document's title says of level and edition: "stiff", "stiff, low-ink edition".
pub(super) fn version(party: &Party) -> String {
    let level = party.level.word();
    match party.edition() {
        Edition::Colour => level.to_owned(),
        edition => format!("{level}, {} edition", edition.word()),
    }
}

/// The sheets of one audience, the letter first among those of the guests; none when it has no pieces.
pub(super) fn sheets(job: &Job<'_>, kit: &Kit, theme: &Loaded, press: &Press) -> Hinted<Vec<Sheet>> {
    let mut pieces = Vec::new();
    if job.audience == Audience::Players {
        pieces.extend(job.party.letters(theme, job.paper.page_size(job.party.large()), &|face| press.fits(face))?);
    }
    pieces.extend(job.party.pieces.iter().filter(|piece| piece.audience == job.audience).cloned());
    // What only the host uses is there once, however many groups play.
    if job.audience != Audience::Host {
        for piece in &mut pieces {
            piece.copies = piece.copies.saturating_mul(job.groups.clamp(1, limits::GROUPS));
        }
    }
    let duplex = duplex(kit, job.shift);
    let mut sheets = impose_for(&pieces, job.paper, job.audience, &job.party.script.title, &duplex)?;
    let backs = job.party.pieces.iter().any(|piece| piece.back.is_some());
    if job.audience == Audience::Host && backs {
        sheets.extend(printer_test::sheets(job.paper, &duplex, &job.party.script.title, job.party.large()));
    }
    Ok(sheets)
}

/// The document of one audience at one level on one paper; none when there is nothing to print.
pub(super) fn document(job: &Job<'_>, opened: &Opened, press: &Press) -> Hinted<Option<Made>> {
    let kit = &opened.kit;
    let sheets = sheets(job, kit, &opened.theme, press)?;
    if sheets.is_empty() {
        return Ok(None);
    }
    let (what, name) = match job.audience {
        Audience::Players => ("sheets for the guests", ""),
        Audience::Hints => ("hint tokens", "tokens"),
        Audience::Host => ("the host’s own sheets", "host-sheets"),
    };
    let info = info(opened, format!("{}: {what} ({})", job.party.script.title, version(job.party)));
    let set = press.sheets(&sheets, &info)?;
    let folder = folder(job.audience);
    Ok(Some(Made {
        path: VPath::new(folder)?.join(&file_name(kit, name, job.party, job.paper))?,
        pages: Some(set.page_count()),
        bytes: set.pdf()?,
        paper: Some(job.paper),
        level: Some(job.party.level),
        edition: Some(job.party.edition()),
        audience: folder,
        sheets: sheets.iter().map(SheetOf::new).collect(),
    }))
}
