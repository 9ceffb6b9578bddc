//! The press: the only place that names the type-setting engine. Faces, sheets and pages in; PDF, SVG and pictures out.
//!
//! One engine sets everything: a piece, a sheet, the host guide. The templates are ours (`assets/print/*.typ`);
//! what an author writes reaches them as strings of JSON in a file system of the job's own, so no text is ever read
//! as code. The same pages give the PDF, the SVG and, from the SVG, the pixels.

mod data;
mod fonts;
mod lines;
mod preview;
mod raster;
mod report;
mod set;
mod shaped;
mod sheets;
mod spans;
mod words;
mod world;

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

use serde::Serialize;
use typst::foundations::Bytes;

pub use preview::Preview;
pub use raster::{Raster, picture};
pub use report::{Fit, MissingGlyph};
pub use set::{Pasted, SetDoc, SetFace};
pub use sheets::Divider;

use crate::diag::{Hinted, Trouble};
use crate::face::{Face, Role};
use crate::files::FontBook;
use crate::limits;
use crate::sheet::{Paper, SAFE_MARGIN, Sheet};
use crate::theme::Lettering;
use data::Gather;

/// What a document says of itself.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct DocInfo {
    /// Title, as shown in a reader's title bar.
    pub title: String,
    /// Author.
    pub author: String,
    /// Language as ISO 639 code, `en`; empty means `en`.
    pub language: String,
    /// What it is about, in a sentence.
    pub subject: String,
    /// Keywords.
    pub keywords: Vec<String>,
    /// The day that it is of: year, month and day, both counted from 1. A document with a day is made for archives as
    /// well; without, it says nothing of time.
    pub day: Option<(u16, u8, u8)>,
}

impl DocInfo {
    fn language(&self) -> &str {
        if self.language.is_empty() { "en" } else { &self.language }
    }
}

/// The type-setting engine with the fonts of one lettering. Cheap to clone; all methods may run in parallel.
#[derive(Clone)]
pub struct Press {
    inner: Arc<Inner>,
}

struct Inner {
    shop: world::Shop,
    kept: preview::Kept,
    lines: lines::KeptLines,
    memory: report::Memory,
    jobs: AtomicUsize,
}

/// The engine remembers layouts; after so many jobs it forgets what none of them used again. A face of sixty may
/// thus be set once each before the first is forgotten.
const JOBS_REMEMBERED: usize = 64;
/// Rounds of forgetting that a layout outlives without use.
const ROUNDS_REMEMBERED: usize = 2;

/// What every template reads from `/press.json`.
#[derive(Serialize)]
struct Setting<'a> {
    /// Families by role: the role's own, then the others, for characters that it lacks.
    fonts: BTreeMap<&'static str, Vec<&'a str>>,
    /// Whether the role's family has true italics.
    italics: BTreeMap<&'static str, bool>,
    /// From the baseline to the next line's capitals, by role, in parts of the type size.
    leading: BTreeMap<&'static str, f64>,
    /// What paragraphs stand further apart than lines, in parts of the type size.
    gap: f64,
    title: &'a str,
    author: &'a str,
    language: &'a str,
    subject: &'a str,
    keywords: &'a [String],
    day: Option<(u16, u8, u8)>,
    paper: Option<PaperData>,
}

/// What the templates of sheets and guide read from `/data.json`.
#[derive(Serialize)]
struct PagesData<'a> {
    sheets: Option<sheets::SheetsData>,
    guide: Option<&'a serde_json::Value>,
    /// Whether the lines of the guide stand closer.
    close: bool,
}

/// The least part of each of a guide's last two pages that is filled; with less its lines are set closer, which may save the page.
const LAST_PAGE: f64 = 0.35;

/// The paper, in millimetres.
#[derive(Serialize)]
struct PaperData {
    name: &'static str,
    w: f64,
    h: f64,
    margin: f64,
}

impl Press {
    /// A press with the families that `lettering` names; one that is not among `fonts` is looked for among the
    /// system's.
    ///
    /// # Errors
    /// When no font has such a family; the hints name those with a like name.
    pub fn new(fonts: &FontBook, lettering: &Lettering) -> Hinted<Self> {
        let fonts = fonts.for_families(lettering.iter().map(|(_, family)| family));
        let shop = world::Shop::new(fonts::Fonts::new(&fonts, lettering)?)?;
        Ok(Self {
            inner: Arc::new(Inner {
                shop,
                kept: preview::Kept::default(),
                lines: lines::KeptLines::default(),
                memory: report::Memory::default(),
                jobs: AtomicUsize::new(0),
            }),
        })
    }

    /// Sets one face on a page of its true size, on transparent ground.
    ///
    /// Text takes the largest size between its least and most at which it fits its rectangle, ink and all; text that
    /// does not fit at its least is set at that size, uncut, and reported.
    ///
    /// # Errors
    /// When the art cannot be read.
    pub fn face(&self, face: &Face) -> Hinted<SetFace> {
        self.one(face, true)
    }

    /// Sets the text of a face without its art.
    ///
    /// # Errors
    /// When the text cannot be set.
    pub fn words(&self, face: &Face) -> Hinted<SetFace> {
        self.one(face, false)
    }

    /// Whether each run of a face, lowest first, fits its place at its least size.
    ///
    /// # Errors
    /// When the text cannot be set.
    pub fn fits(&self, face: &Face) -> Hinted<Vec<bool>> {
        Ok(self.words(face)?.fits.iter().map(|fit| !fit.overflows).collect())
    }

    fn one(&self, face: &Face, art: bool) -> Hinted<SetFace> {
        let doc = DocInfo::default();
        let mut gather = self.gather(&doc);
        let data = gather.face(face, "", art);
        let document = self.run("one.typ", &data, gather.files(), None, &doc)?;
        let fits = report::fits(&document, &gather.runs, &self.inner.memory);
        Ok(SetFace { fits, missing: gather.missing, document })
    }

    /// Sets sheets: one page each, with heads and feet, cut lines, marks, labels and check bars.
    ///
    /// # Errors
    /// When art cannot be read, or there are too many sheets.
    pub fn sheets(&self, sheets: &[Sheet], doc: &DocInfo) -> Hinted<SetDoc> {
        self.laid("sheets.typ", sheets, None, doc)
    }

    /// Sets everything of a kit as one document: the sheets, with `divider` before the first that is not for guests, and
    /// the host guide by its `data`.
    ///
    /// # Errors
    /// As [`Press::sheets`] and [`Press::pages`].
    pub fn whole(
        &self,
        sheets: &[Sheet],
        divider: Divider<'_>,
        guide: (&serde_json::Value, Paper),
        doc: &DocInfo,
    ) -> Hinted<SetDoc> {
        self.laid("whole.typ", sheets, Some((divider, guide)), doc)
    }

    fn laid(
        &self,
        template: &str,
        sheets: &[Sheet],
        more: Option<(Divider<'_>, (&serde_json::Value, Paper))>,
        doc: &DocInfo,
    ) -> Hinted<SetDoc> {
        if sheets.len() > limits::SHEETS {
            return Err(Trouble::new(format!("{} sheets are too many for one document", sheets.len()))
                .hint(format!("at most {} can be printed at once", limits::SHEETS)));
        }
        let mut gather = self.gather(doc);
        let (divider, paper) = (more.map(|(divider, (_, paper))| (divider, paper)), more.map(|(_, (_, paper))| paper));
        let sheets = sheets::data(sheets, divider, &mut gather);
        let mut data = PagesData { sheets: Some(sheets), guide: more.map(|(_, (guide, _))| guide), close: false };
        let files = gather.files();
        let document = if more.is_some() {
            self.filled(template, &mut data, &files, paper, doc)?
        } else {
            self.run(template, &data, files, paper, doc)?
        };
        let fits = report::fits(&document, &gather.runs, &self.inner.memory);
        let mut missing = gather.missing;
        if more.is_some() {
            missing.extend(words::lost(&document));
        }
        Ok(SetDoc { fits, missing, document, archival: doc.day.is_some() })
    }

    /// Sets the host guide by its `data`.
    ///
    /// # Errors
    /// When the template does not agree with the data.
    pub fn guide(&self, data: &serde_json::Value, paper: Paper, doc: &DocInfo) -> Hinted<SetDoc> {
        let mut data = PagesData { sheets: None, guide: Some(data), close: false };
        let document = self.filled("guide.typ", &mut data, &BTreeMap::new(), Some(paper), doc)?;
        let missing = words::lost(&document);
        Ok(SetDoc { fits: Vec::new(), missing, document, archival: doc.day.is_some() })
    }

    /// Pages that end with the guide; set closer where its words would end in a few lines on a page and that saves one.
    fn filled(
        &self,
        template: &str,
        data: &mut PagesData<'_>,
        files: &BTreeMap<String, Bytes>,
        paper: Option<Paper>,
        doc: &DocInfo,
    ) -> Hinted<typst_layout::PagedDocument> {
        let roomy = self.run(template, data, files.clone(), paper, doc)?;
        if words::last_pages_filled(&roomy) >= LAST_PAGE {
            return Ok(roomy);
        }
        data.close = true;
        let close = self.run(template, data, files.clone(), paper, doc)?;
        Ok(if close.pages().len() < roomy.pages().len() { close } else { roomy })
    }

    /// Sets pages by a template of `assets/print`, which reads `data` as `/data.json` and the paper, fonts and
    /// document's names as `/press.json`.
    ///
    /// # Errors
    /// When there is no such template, or it does not agree with the data.
    pub fn pages(&self, template: &str, data: &serde_json::Value, paper: Paper, doc: &DocInfo) -> Hinted<SetDoc> {
        self.pages_with(template, data, &[], paper, doc)
    }

    /// As [`Press::pages`], with pictures that the template reads by their names: `/cover.png`.
    ///
    /// # Errors
    /// As [`Press::pages`].
    pub fn pages_with(
        &self,
        template: &str,
        data: &serde_json::Value,
        pictures: &[(&str, Vec<u8>)],
        paper: Paper,
        doc: &DocInfo,
    ) -> Hinted<SetDoc> {
        let files = pictures.iter().map(|(name, bytes)| ((*name).to_owned(), Bytes::new(bytes.clone()))).collect();
        let document = self.run(template, data, files, Some(paper), doc)?;
        let missing = words::lost(&document);
        Ok(SetDoc { fits: Vec::new(), missing, document, archival: doc.day.is_some() })
    }

    /// The characters of `text` that the upright font of a role cannot draw.
    #[must_use]
    pub fn lacks(&self, role: Role, text: &str) -> Vec<char> {
        self.inner.shop.fonts.lacks(role, fonts::Style::default(), &text.chars().collect())
    }

    fn gather<'a>(&'a self, doc: &'a DocInfo) -> Gather<'a> {
        Gather::new(&self.inner.shop.fonts, &self.inner.memory, doc.language())
    }

    fn run(
        &self,
        template: &str,
        data: &impl Serialize,
        mut files: BTreeMap<String, Bytes>,
        paper: Option<Paper>,
        doc: &DocInfo,
    ) -> Hinted<typst_layout::PagedDocument> {
        let shop = &self.inner.shop;
        let setting = Setting {
            fonts: ROLES.iter().map(|role| (role.name(), self.families(*role))).collect(),
            leading: ROLES.iter().map(|role| (role.name(), leading(*role))).collect(),
            gap: PARAGRAPH_GAP,
            italics: ROLES.iter().map(|role| (role.name(), shop.fonts.italic(*role))).collect(),
            title: if doc.title.is_empty() { "Untitled" } else { &doc.title },
            author: &doc.author,
            language: doc.language(),
            subject: &doc.subject,
            keywords: &doc.keywords,
            day: doc.day,
            paper: paper.map(|paper| PaperData {
                name: paper.word(),
                w: paper.size().w.get(),
                h: paper.size().h.get(),
                margin: SAFE_MARGIN.get(),
            }),
        };
        files.insert("press.json".into(), Bytes::new(json(&setting)?));
        files.insert("data.json".into(), Bytes::new(json(data)?));
        let document = shop.set(template, files);
        if self.inner.jobs.fetch_add(1, Ordering::Relaxed) % JOBS_REMEMBERED == JOBS_REMEMBERED - 1 {
            comemo::evict(ROUNDS_REMEMBERED);
        }
        document
    }

    /// The role's family, then the text's, then the others.
    fn families(&self, role: Role) -> Vec<&str> {
        let mut families: Vec<&str> = Vec::new();
        for role in [role].iter().chain(&ROLES) {
            let family = self.inner.shop.fonts.family(*role);
            if !families.contains(&family) {
                families.push(family);
            }
        }
        families
    }

    fn kept(&self) -> &preview::Kept {
        &self.inner.kept
    }
}

/// From the baseline to the next line's capitals, in parts of the type size.
const fn leading(role: Role) -> f64 {
    match role {
        Role::Text | Role::Code => 0.60,
        Role::Display => 0.48,
        Role::Hand => 0.52,
    }
}

/// What paragraphs stand further apart than lines, in parts of the type size.
const PARAGRAPH_GAP: f64 = 0.42;

/// The lettering roles, the one for running text first.
const ROLES: [Role; 4] = [Role::Text, Role::Code, Role::Display, Role::Hand];

/// A value as the templates read it. Characters that no page may hold (PDF/A-2 and PDF/UA-1 refuse them: controls, the
/// byte order mark, the noncharacters beside it) become spaces: text may come from any file.
fn json(value: &impl Serialize) -> Hinted<Vec<u8>> {
    let text = serde_json::to_string(value)
        .map_err(|error| Trouble::new(format!("the page's data cannot be written: {error}")))?;
    let mut out = String::with_capacity(text.len());
    let mut rest = text.chars();
    while let Some(c) = rest.next() {
        match c {
            '\u{FEFF}' | '\u{FFFE}' | '\u{FFFF}' => out.push(' '),
            // JSON writes controls as escapes, and a backslash nowhere else but in one.
            '\\' => match rest.next() {
                Some('b' | 'f') => out.push(' '),
                Some('u') => {
                    let code: String = rest.by_ref().take(4).collect();
                    let control = u32::from_str_radix(&code, 16).is_ok_and(|code| code < 0x20);
                    if control { out.push(' ') } else { out.extend(["\\u", &code]) }
                }
                Some(escape) => out.extend(['\\', escape]),
                None => {}
            },
            c => out.push(c),
        }
    }
    Ok(out.into_bytes())
}
