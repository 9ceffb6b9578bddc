use std::path::PathBuf;

use rayon::prelude::*;
use serde_json::Value;

use super::documents::{self, Job as DocumentJob, document, file_name, info};
use super::guide;
use super::listing::Listing;
use super::manifest::{Entry, FILE, FORMAT, MADE_BY, Made, Manifest};
use super::options::{Go, NOTHING, Options, Progress};
use super::place::Site;
use super::steps::Steps;
use super::{Opened, archive, pieces, whole};
use crate::checks::{self, Finding, LevelProof, Proof};
use crate::diag::{Hinted, Level, Severity, Trouble};
use crate::face::{Audience, Stock};
use crate::files::VPath;
use crate::prep::{PrepPlan, plan};
use crate::print::{DocInfo, Press};
use crate::sheet::Paper;
use crate::theme::{Edition, Lettering};

/// What was exported.
#[derive(Clone, Debug)]
pub struct Exported {
    /// The bundle's folder.
    pub folder: PathBuf,
    /// Its files, sorted by path, without the manifest and the zip file.
    pub files: Vec<Entry>,
    /// The zip file, if one was asked for.
    pub zip: Option<PathBuf>,
    /// What the checks found.
    pub findings: Vec<Finding>,
    /// Whether findings blocked and it was exported all the same.
    pub forced: bool,
}

/// A press with the lettering of the opened kit.
///
/// # Errors
/// When the theme or the kit names a font that nobody has.
pub fn press_of(opened: &Opened) -> Hinted<Press> {
    let lettering = Lettering::new(&opened.theme.theme.lettering, &opened.kit.look.lettering)?;
    Press::new(&opened.fonts, &lettering)
}

/// Proves an opened kit at these levels, type setting and what is printed included.
///
/// # Errors
/// When the palette or the lettering cannot be read.
pub fn prove(opened: &Opened, press: &Press, levels: &[Level]) -> Hinted<Proof> {
    checks::prove_printed(&opened.kit, &opened.theme, press, levels)
}

/// Proves a kit and makes its bundle. `progress` is told of every step and says whether to go on.
///
/// # Errors
/// When findings block and it is not forced; when a piece does not fit its paper; when the disk refuses; when
/// `progress` says stop. Nothing is then left behind.
pub fn export(opened: &Opened, options: &Options, progress: &(dyn Fn(Progress) -> Go + Sync)) -> Hinted<Exported> {
    let press = press_of(opened)?;
    let proofs = prove_editions(opened, &press, &options.levels, &options.editions)?;
    export_proven(opened, &press, &proofs, options, progress)
}

/// Proves an opened kit once for each of the editions.
///
/// # Errors
/// As [`prove`].
pub fn prove_editions(opened: &Opened, press: &Press, levels: &[Level], editions: &[Edition]) -> Hinted<Vec<Proof>> {
    let prove = |edition: &Edition| checks::prove_edition(&opened.kit, &opened.theme, press, levels, *edition);
    editions.par_iter().map(prove).collect()
}

/// The findings of several editions as one list: what the first has is not told again of the others.
#[must_use]
pub fn findings_of(proofs: &[Proof]) -> Vec<Finding> {
    let mut all: Vec<Finding> = Vec::new();
    for proof in proofs {
        let new = |finding: &&Finding| {
            let same = |known: &Finding| Finding { edition: finding.edition, ..known.clone() } == **finding;
            !all.iter().any(same)
        };
        let new: Vec<Finding> = proof.findings.iter().filter(new).cloned().collect();
        all.extend(new);
    }
    all
}

/// Makes the bundle of a kit that was proven in the editions and at the levels asked for, by [`prove_editions`].
///
/// # Errors
/// As [`export`].
pub fn export_proven(
    opened: &Opened,
    press: &Press,
    proofs: &[Proof],
    options: &Options,
    progress: &(dyn Fn(Progress) -> Go + Sync),
) -> Hinted<Exported> {
    let kit = &opened.kit;
    let findings = findings_of(proofs);
    let blocking: Vec<String> = findings.iter().filter(|f| f.severity == Severity::Blocks).map(line).collect();
    if !blocking.is_empty() && !options.force {
        return Err(blocked(&blocking));
    }
    let site = Site::new(&options.out, kit)?;
    let editions = proofs.iter().map(|proof| levels(proof, options)).collect::<Hinted<Vec<_>>>()?;
    // Pictures of pieces and of the flow are looked at, not printed: one edition of them is enough.
    let shown = editions.first().cloned().unwrap_or_default();
    let parties: Vec<_> = shown.iter().map(|level| &level.party).collect();
    let proven: Vec<&LevelProof> = editions.iter().flatten().copied().collect();
    let pictures = pieces::jobs(kit, &opened.theme, press, &parties, &options.papers)?;
    let documents = document_jobs(&proven, options);
    let guides: Vec<(&LevelProof, Paper)> =
        proven.iter().flat_map(|level| options.papers.iter().map(|paper| (*level, *paper))).collect();
    let listing = match options.papers.first() {
        Some(paper) if options.listing => Listing::new(opened, &shown, &options.editions, *paper)?,
        _ => None,
    };
    let covers = listing.as_ref().map(Listing::pictures).unwrap_or_default();
    let books = guides.len() * if options.one_pdf { 2 } else { 1 };
    let steps = Steps::new(documents.len() + books + shown.len() + pictures.len() + covers.len() + 2, progress);

    // The guide waits for the sheets, whose pages it counts; pictures wait for nobody.
    let printed = || -> Hinted<(Vec<Made>, Vec<PrepPlan>)> {
        let sheets = steps.all(&documents, |job| {
            let made = document(job, opened, press)?;
            let what = made.as_ref().map_or_else(|| NOTHING.to_owned(), |made| made.path.to_string());
            Ok((made, what))
        })?;
        let mut files: Vec<Made> = sheets.into_iter().flatten().collect();
        let prep: Vec<PrepPlan> = proven.par_iter().map(|level| prep(opened, level, options.groups)).collect();
        let flows: Vec<(&LevelProof, &PrepPlan)> = shown.iter().copied().zip(&prep).collect();
        let made = steps.all(&guides, |(level, paper)| {
            let prep = proven.iter().zip(&prep).find(|(known, _)| std::ptr::eq(**known, *level));
            let prep = prep.map(|(_, prep)| prep).ok_or_else(|| Trouble::new("a level has no preparation"))?;
            let data = guide_data(opened, level, prep, (*paper, options.groups), &blocking, &files)?;
            let made = host_guide(opened, press, level, *paper, &data)?;
            let what = made.path.to_string();
            Ok(((made, data), what))
        })?;
        let (made, guide_data): (Vec<Made>, Vec<Value>) = made.into_iter().unzip();
        files.extend(made);
        if options.one_pdf {
            let jobs: Vec<_> = guides.iter().zip(&guide_data).collect();
            files.extend(steps.all(&jobs, |((level, paper), data)| {
                let job = document_job(level, *paper, Audience::Host, options);
                let made = whole::document(&job, opened, press, data)?;
                let what = made.path.to_string();
                Ok((made, what))
            })?);
        }
        files.extend(steps.all(&flows, |(level, prep)| {
            let made = drawn_flow(opened, press, level, prep)?;
            let what = made.path.to_string();
            Ok((made, what))
        })?);
        Ok((files, prep))
    };
    let looked_at = || {
        let pictures = steps.all(&pictures, |job| Ok((pieces::pictures(job, press)?, job.told())));
        let covers = listing.as_ref().map(|listing| {
            steps.all(&covers, |picture| {
                let made = listing.picture(*picture, press)?;
                let what = made.path.to_string();
                Ok((made, what))
            })
        });
        Ok::<_, Trouble>((pictures?, covers.transpose()?.unwrap_or_default()))
    };
    let (printed, pictures) = rayon::join(printed, looked_at);
    let (mut files, prep) = printed?;
    let (pictures, covers) = pictures?;
    files.extend(pictures.into_iter().flatten());
    if let Some(listing) = &listing {
        let prep = proven.iter().zip(&prep).find(|(known, _)| std::ptr::eq(**known, listing.level()));
        if let Some((_, prep)) = prep {
            let first = options.papers.first().copied().unwrap_or(Paper::A4);
            let mut printed = files_of(listing.level(), first, &files);
            printed.retain(|file| !file.path.as_str().contains("-everything-"));
            let prep = prep.clone().on_sheets(kit, &sheets_of(&printed), options.groups);
            files.extend(listing.words(&options.papers, &prep, &files, press)?);
        }
    }
    files.extend(covers);
    steps.step(if listing.is_some() { "listing" } else { "pictures of all pieces" })?;
    files.sort_by(|a, b| a.path.cmp(&b.path));
    finish(opened, &site, &files, blocking, options, &steps, findings)
}

/// Manifest and zip file, and everything into its place.
fn finish(
    opened: &Opened,
    site: &Site,
    files: &[Made],
    blocking: Vec<String>,
    options: &Options,
    steps: &Steps<'_>,
    findings: Vec<Finding>,
) -> Hinted<Exported> {
    let kit = &opened.kit;
    let zip_name = options.zip.then(|| format!("{}.zip", kit.id));
    let forced = !blocking.is_empty();
    let manifest = Manifest {
        format: FORMAT,
        made_by: MADE_BY.to_owned(),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        kit: kit.id.to_string(),
        title: kit.title.clone(),
        author: kit.author.clone(),
        terms: kit.terms.clone(),
        forced,
        blocking,
        zip: zip_name.clone(),
        files: files.par_iter().map(Made::entry).collect(),
    };
    let json = manifest.json()?;
    let mut more: Vec<(&str, &[u8])> = vec![(FILE, json.as_bytes())];
    let zipped = match &zip_name {
        Some(_) => {
            let inside = files.iter().map(|file| (file.path.as_str(), file.bytes.as_slice()));
            let inside: Vec<(&str, &[u8])> = inside.chain(more.iter().copied()).collect();
            Some(archive::zip(kit.id.as_str(), &inside)?)
        }
        None => None,
    };
    if let (Some(name), Some(bytes)) = (&zip_name, &zipped) {
        more.push((name, bytes));
    }
    steps.step("all files")?;
    site.put(files, &more, || steps.go_on())?;
    let folder = site.folder();
    Ok(Exported { zip: zip_name.map(|name| folder.join(name)), folder, files: manifest.files, findings, forced })
}

/// The levels asked for, each as it was proven.
fn levels<'a>(proof: &'a Proof, options: &Options) -> Hinted<Vec<&'a LevelProof>> {
    let missing = |level: Level| Trouble::new(format!("the level {} was not proven", level.word()));
    options
        .levels
        .iter()
        .map(|level| proof.levels.iter().find(|proven| proven.party.level == *level).ok_or_else(|| missing(*level)))
        .collect()
}

fn document_jobs<'a>(proven: &[&'a LevelProof], options: &Options) -> Vec<DocumentJob<'a>> {
    let audiences = [Audience::Players, Audience::Hints, Audience::Host];
    let mut jobs = Vec::new();
    for level in proven {
        for paper in &options.papers {
            jobs.extend(audiences.map(|audience| document_job(level, *paper, audience, options)));
        }
    }
    jobs
}

const fn document_job<'a>(
    level: &'a LevelProof,
    paper: Paper,
    audience: Audience,
    options: &Options,
) -> DocumentJob<'a> {
    DocumentJob { party: &level.party, paper, audience, shift: options.shift, groups: options.groups }
}

/// What the host does beforehand at one level.
pub(super) fn prep(opened: &Opened, level: &LevelProof, groups: u16) -> PrepPlan {
    plan(&level.party.spoken(&opened.kit), level.party.level, &level.party.prep_steps(), groups)
}

pub(super) fn guide_data(
    opened: &Opened,
    level: &LevelProof,
    prep: &PrepPlan,
    (paper, groups): (Paper, u16),
    forced: &[String],
    files: &[Made],
) -> Hinted<Value> {
    let files = files_of(level, paper, files);
    let prep = &prep.clone().on_sheets(&opened.kit, &sheets_of(&files), groups);
    let (party, flow, rehearsal) = (&level.party, &level.flow, level.rehearsal.as_deref());
    let source = guide::Source { opened, party, flow, prep, rehearsal, paper, groups, forced, files: &files };
    guide::data(&source)
}

/// The documents of one level, edition and paper.
fn files_of<'a>(level: &LevelProof, paper: Paper, files: &'a [Made]) -> Vec<&'a Made> {
    let (of, edition) = (Some(level.party.level), Some(level.party.edition()));
    let own = |file: &&Made| file.paper == Some(paper) && file.level == of && file.edition == edition;
    files.iter().filter(own).filter(|file| file.path.extension() == "pdf").collect()
}

/// How many sheets these documents take of each kind of paper; a document without pieces is on plain paper.
fn sheets_of(files: &[&Made]) -> Vec<(Stock, usize)> {
    let laid = files.iter().flat_map(|file| &file.sheets).filter_map(|sheet| Some((sheet.stock?, 1)));
    let text = files.iter().filter(|file| file.sheets.is_empty()).filter_map(|file| Some((Stock::Plain, file.pages?)));
    laid.chain(text).collect()
}

fn host_guide(opened: &Opened, press: &Press, level: &LevelProof, paper: Paper, data: &Value) -> Hinted<Made> {
    let info = info(opened, format!("{}: host guide ({})", level.party.script.title, documents::version(&level.party)));
    let set = press.guide(data, paper, &info)?;
    let folder = documents::folder(Audience::Host);
    Ok(Made {
        path: VPath::new(folder)?.join(&file_name(&opened.kit, "guide", &level.party, paper))?,
        pages: Some(set.page_count()),
        bytes: set.pdf()?,
        paper: Some(paper),
        level: Some(level.party.level),
        edition: Some(level.party.edition()),
        audience: folder,
        sheets: Vec::new(),
    })
}

/// The whole flow of one level as a picture for the host, letters as outlines.
fn drawn_flow(opened: &Opened, press: &Press, level: &LevelProof, prep: &PrepPlan) -> Hinted<Made> {
    let (party, flow) = (&level.party, &level.flow);
    let (paper, rehearsal) = (Paper::A4, None);
    let source = guide::Source { opened, party, flow, prep, rehearsal, paper, groups: 1, forced: &[], files: &[] };
    let info = DocInfo { title: format!("{}: flow", party.script.title), ..DocInfo::default() };
    // The page takes its size from the drawing, not from the paper.
    let set = press.pages("flow.typ", &guide::flow_page(&source)?, Paper::A4, &info)?;
    let folder = documents::folder(Audience::Host);
    Ok(Made {
        path: VPath::new(folder)?.join(&format!("{}-flow-{}.svg", opened.kit.id, party.level.word()))?,
        pages: None,
        bytes: set.svg(0)?.into_bytes(),
        paper: None,
        level: Some(party.level),
        edition: Some(party.edition()),
        audience: folder,
        sheets: Vec::new(),
    })
}

/// A finding in one line, as the guide and the manifest quote it.
fn line(finding: &Finding) -> String {
    format!("{}{}: {}", finding.anchor, finding.only(), finding.message)
}

fn blocked(blocking: &[String]) -> Trouble {
    let what =
        if blocking.len() == 1 { "1 finding blocks".into() } else { format!("{} findings block", blocking.len()) };
    let mut trouble = Trouble::new(format!("{what} the export"));
    if let Some(first) = blocking.first() {
        trouble = trouble.hint(format!("the first: {first}"));
    }
    trouble
        .hint("`inklatch check` lists them all and says how to mend them")
        .hint("--force exports all the same; the host guide then says so on its first page")
}
