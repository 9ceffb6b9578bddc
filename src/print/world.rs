use std::collections::BTreeMap;
use std::path::PathBuf;

use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook as Book};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt as _, World, WorldExt as _};
use typst_layout::PagedDocument;

use super::fonts::Fonts;
use crate::diag::{Hinted, Trouble};
use crate::files::{Builtin, Files as _, VPath};
use crate::limits;

/// What all jobs of a press share.
pub(super) struct Shop {
    pub(super) fonts: Fonts,
    std: LazyHash<Library>,
    templates: BTreeMap<String, Source>,
}

/// Where the templates lie among what the program carries.
const TEMPLATES: &str = "assets/print";

impl Shop {
    pub(super) fn new(fonts: Fonts) -> Hinted<Self> {
        let files = Builtin::new();
        let mut templates = BTreeMap::new();
        for path in files.list(&VPath::new(TEMPLATES)?)? {
            if path.extension() != "typ" {
                continue;
            }
            let name = path.file_name().to_owned();
            let text = files.read_text(&path, limits::TEMPLATE_BYTES)?;
            templates.insert(name.clone(), Source::new(id(&name)?, text));
        }
        Ok(Self { fonts, std: LazyHash::new(Library::default()), templates })
    }

    /// Sets the template with these files beside it.
    pub(super) fn set(&self, template: &str, files: BTreeMap<String, Bytes>) -> Hinted<PagedDocument> {
        if !self.templates.contains_key(template) {
            let known: Vec<&str> = self.templates.keys().map(String::as_str).collect();
            return Err(Trouble::new(format!("there is no page template `{template}`"))
                .hint(format!("the templates are {}", known.join(", "))));
        }
        let job = Job { shop: self, main: id(template)?, files };
        typst::compile::<PagedDocument>(&job).output.map_err(|errors| {
            let trouble = trouble(template, &errors);
            match errors.first().and_then(|error| job.line(error)) {
                Some(line) => trouble.at(line),
                None => trouble,
            }
        })
    }
}

/// What the engine complained about. Templates are ours and text is data, so a kit cannot cause these but by its
/// art; the words help whoever mends a template.
pub(super) fn trouble(what: &str, errors: &[SourceDiagnostic]) -> Trouble {
    let mut trouble = Trouble::new(match errors.first() {
        Some(error) => format!("{what} cannot be set: {}", error.message),
        None => format!("{what} cannot be set"),
    });
    for hint in errors.iter().flat_map(|error| &error.hints) {
        trouble = trouble.hint(hint.v.to_string());
    }
    trouble
}

fn id(name: &str) -> Hinted<FileId> {
    let path = VirtualPath::new(name).map_err(|error| Trouble::new(format!("`{name}` cannot be a file: {error:?}")))?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

/// One thing to set: a template and the files it reads. There is nothing else in its world: no disk, no network,
/// no clock.
struct Job<'a> {
    shop: &'a Shop,
    main: FileId,
    files: BTreeMap<String, Bytes>,
}

impl Job<'_> {
    /// The template and line at fault, for whoever mends it.
    fn line(&self, error: &SourceDiagnostic) -> Option<String> {
        let source = self.source(error.span.id()?).ok()?;
        let line = source.lines().byte_to_line(self.range(error.span)?.start)?;
        Some(format!("{}, line {}", source.id().vpath().get_without_slash(), line + 1))
    }
}

impl World for Job<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &self.shop.std
    }

    fn book(&self) -> &LazyHash<Book> {
        &self.shop.fonts.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let name = name(id)?;
        self.shop.templates.get(name).cloned().ok_or_else(|| FileError::NotFound(PathBuf::from(name)))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let name = name(id)?;
        self.files.get(name).cloned().ok_or_else(|| FileError::NotFound(PathBuf::from(name)))
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.shop.fonts.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn name(id: FileId) -> FileResult<&'static str> {
    let path = id.get();
    match path.root() {
        VirtualRoot::Project => Ok(path.vpath().get_without_slash()),
        VirtualRoot::Package(_) => Err(FileError::AccessDenied),
    }
}
