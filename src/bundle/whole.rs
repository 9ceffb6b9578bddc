use serde_json::Value;

use super::documents::{self, Job, file_name, info, sheets, version};
use super::manifest::Made;
use super::open::Opened;
use crate::diag::Hinted;
use crate::face::Audience;
use crate::files::VPath;
use crate::print::{Divider, Press};

/// What stands on the page that parts the guests' pages from the rest.
const TITLE: &str = "For the host only";

/// Everything of one level on one paper as one document: the guests' sheets, a page that says where they end, the hint
/// tokens, the host's own sheets, and the host guide by its `data`.
///
/// `job` says for which party and paper; its audience is of no account. The file lies among the host's, because most of
/// it is.
pub(super) fn document(job: &Job<'_>, opened: &Opened, press: &Press, data: &Value) -> Hinted<Made> {
    let kit = &opened.kit;
    let mut all = Vec::new();
    let mut room = 0;
    for audience in [Audience::Players, Audience::Hints, Audience::Host] {
        all.extend(sheets(&Job { audience, ..*job }, kit, &opened.theme, press)?);
        if audience == Audience::Players {
            room = all.len();
        }
    }
    let info = info(opened, format!("{}: everything ({})", job.party.script.title, version(job.party)));
    let lines = lines(room);
    let divider = Divider { title: TITLE, lines: &lines };
    let set = press.whole(&all, divider, (data, job.paper), &info)?;
    let folder = documents::folder(Audience::Host);
    Ok(Made {
        path: VPath::new(folder)?.join(&file_name(kit, "everything", job.party, job.paper))?,
        pages: Some(set.page_count()),
        bytes: set.pdf()?,
        paper: Some(job.paper),
        level: Some(job.party.level),
        edition: Some(job.party.edition()),
        audience: folder,
        sheets: Vec::new(),
    })
}

/// What the page says, after `room` pages for the guests.
fn lines(room: usize) -> Vec<String> {
    let theirs = match room {
        0 => String::new(),
        1 => "Page 1 goes into the room. ".to_owned(),
        n => format!("Pages 1 to {n} go into the room. "),
    };
    vec![
        "Guests: stop here. Every page after this one gives something away.".to_owned(),
        format!(
            "{theirs}From page {} on everything is yours: the hint tokens, your own sheets, and the guide with the answers.",
            room + 2
        ),
    ]
}
