use std::sync::Arc;

use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use super::raster::{Raster, blank, draw, paste};
use super::report::{Fit, MissingGlyph};
use super::world;
use crate::diag::{Hinted, Trouble};
use crate::units::{Mm, Pt, Rect, Size};

/// A face, set.
#[derive(Clone, Debug)]
pub struct SetFace {
    /// How each run of text came out, lowest first.
    pub fits: Vec<Fit>,
    /// Characters that the fonts lack.
    pub missing: Vec<MissingGlyph>,
    pub(super) document: PagedDocument,
}

/// Pages, set.
#[derive(Clone, Debug)]
pub struct SetDoc {
    /// How each run of text on the sheets came out; each piece is reported once.
    pub fits: Vec<Fit>,
    /// Characters that the fonts lack.
    pub missing: Vec<MissingGlyph>,
    pub(super) document: PagedDocument,
    /// Whether the document says its day, which an archive asks for.
    pub(super) archival: bool,
}

impl SetFace {
    /// The face as SVG at its true size, letters as outlines, on transparent ground.
    #[must_use]
    pub fn svg(&self) -> String {
        svg(&self.document, 0).unwrap_or_default()
    }

    /// The face in pixels.
    ///
    /// # Errors
    /// When it would have too many.
    pub fn raster(&self, px_per_mm: f64) -> Hinted<Raster> {
        raster(&self.document, 0, px_per_mm)
    }

    /// The face in pixels with pictures over it, the first undermost: quicker than a face that holds them as its art, which
    /// sets, writes and reads each once more.
    ///
    /// # Errors
    /// When it would have too many, or a picture cannot be read.
    pub fn raster_under(&self, over: &[Pasted], px_per_mm: f64) -> Hinted<Raster> {
        let size = size(&self.document, 0).ok_or_else(|| no_page(&self.document, 0))?;
        let mut pixmap = blank(size, px_per_mm)?;
        draw(&svg(&self.document, 0)?, &mut pixmap)?;
        for picture in over {
            paste(&picture.svg, (picture.rect, picture.turn), px_per_mm, &mut pixmap)?;
        }
        Ok(Raster::from_pixmap(pixmap))
    }
}

/// A picture that is drawn over a face.
#[derive(Clone, Debug)]
pub struct Pasted {
    /// The picture, as SVG.
    pub svg: Arc<str>,
    /// The place that it fills.
    pub rect: Rect,
    /// Degrees clockwise about the middle of that.
    pub turn: f64,
}

impl SetDoc {
    /// How many pages there are.
    #[must_use]
    pub fn page_count(&self) -> usize {
        self.document.pages().len()
    }

    /// The size of a page, counted from 0.
    #[must_use]
    pub fn page_size(&self, page: usize) -> Option<Size> {
        size(&self.document, page)
    }

    /// All pages as PDF: vectors, subset fonts, selectable text, tags, bookmarks; held to PDF/UA-1 (ISO 14289-1), and
    /// where the document says its day to PDF/A-2a (ISO 19005-2) as well.
    /// The same pages give the same bytes: no time of making is written.
    ///
    /// # Errors
    /// When the pages do not keep to the standard: a picture that is neither ornament nor described in words.
    pub fn pdf(&self) -> Hinted<Vec<u8>> {
        let all = [PdfStandard::V_1_7, PdfStandard::Ua_1, PdfStandard::A_2a];
        let standards = PdfStandards::new(if self.archival { &all } else { &all[..2] })
            .map_err(|error| Trouble::new(format!("the PDF standard is not to be had: {}", error.message())))?;
        let options = PdfOptions {
            ident: Smart::Auto,
            creator: Smart::Custom(Some(concat!("Inklatch ", env!("CARGO_PKG_VERSION")).to_owned())),
            timestamp: None,
            page_ranges: None,
            standards,
            tagged: true,
            pretty: false,
        };
        typst_pdf::pdf(&self.document, &options).map_err(|errors| world::trouble("the PDF", &errors))
    }

    /// A page as SVG, counted from 0, letters as outlines.
    ///
    /// # Errors
    /// When there is no such page.
    pub fn svg(&self, page: usize) -> Hinted<String> {
        svg(&self.document, page)
    }

    /// A page in pixels, counted from 0, on white.
    ///
    /// # Errors
    /// When there is no such page, or it would have too many pixels.
    pub fn raster(&self, page: usize, px_per_mm: f64) -> Hinted<Raster> {
        raster(&self.document, page, px_per_mm)
    }
}

fn svg(document: &PagedDocument, page: usize) -> Hinted<String> {
    document
        .pages()
        .get(page)
        .map(|page| typst_svg::svg(page, &typst_svg::SvgOptions::default()))
        .ok_or_else(|| no_page(document, page))
}

fn raster(document: &PagedDocument, page: usize, px_per_mm: f64) -> Hinted<Raster> {
    let size = size(document, page).ok_or_else(|| no_page(document, page))?;
    let mut pixmap = blank(size, px_per_mm)?;
    draw(&svg(document, page)?, &mut pixmap)?;
    Ok(Raster::from_pixmap(pixmap))
}

pub(super) fn size(document: &PagedDocument, page: usize) -> Option<Size> {
    let size = document.pages().get(page)?.frame.size();
    let mm = |pt: f64| -> Mm { Pt::new(pt).to_mm() };
    Some(Size { w: mm(size.x.to_pt()), h: mm(size.y.to_pt()) })
}

fn no_page(document: &PagedDocument, page: usize) -> Trouble {
    Trouble::new(format!("there is no page {}", page + 1)).hint(format!("there are {}", document.pages().len()))
}
