use serde::Serialize;

use crate::diag::{Anchor, Level, Severity};
use crate::ids::PuzzleId;
use crate::kit::edit::Edit;
use crate::theme::Edition;

/// What a check found, where, why it matters, and how to mend it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// The check's name.
    pub name: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// The play level; none when every level that was proven has it, or the message names those that have it.
    pub level: Option<Level>,
    /// The edition; none for the usual one, in colour.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edition: Option<Edition>,
    /// Where.
    pub anchor: Anchor,
    /// The thing at fault first, in a line, lower case, no full stop.
    pub message: String,
    /// Why it matters at the table.
    pub why: String,
    /// The puzzle whose code it is about, where the anchor is another place.
    #[serde(skip)]
    pub subject: Option<PuzzleId>,
    /// How to mend it, one sentence each.
    pub help: Vec<String>,
    /// A mend that the program can make.
    pub fix: Option<Fix>,
}

/// A mend made of the editor's own edits.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Fix {
    /// What it does, for a button: "Take the mechanic's draft".
    pub title: String,
    /// How freely it may be made.
    pub kind: FixKind,
    /// The edits, one step of undo.
    pub edits: Vec<Edit>,
}

/// How freely a mend may be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FixKind {
    /// Without asking: it changes nothing that an author cares about.
    Safe,
    /// When the author says so.
    Ask,
    /// Shown as a suggestion; the author edits by hand.
    ShowOnly,
}

impl Finding {
    /// Where it holds, in words: " (stiff, low-ink edition)"; nothing where it holds at every level in colour.
    #[must_use]
    pub fn only(&self) -> String {
        let level = self.level.map(|level| level.word().to_owned());
        let edition = self.edition.map(|edition| format!("{} edition", edition.word()));
        let words: Vec<String> = level.into_iter().chain(edition).collect();
        if words.is_empty() { String::new() } else { format!(" ({})", words.join(", ")) }
    }
}

/// Checks whose findings follow from what others say: the cause is read first.
const FOLLOW: &[&str] = &["never-reached", "finish-out-of-reach"];

/// Sorted and without equals.
pub(super) fn sorted(mut findings: Vec<Finding>) -> Vec<Finding> {
    findings.sort_by(|a, b| {
        let follows = |finding: &Finding| FOLLOW.contains(&finding.name);
        (a.severity, follows(a), &a.anchor, a.name, &a.message, a.level).cmp(&(
            b.severity,
            follows(b),
            &b.anchor,
            b.name,
            &b.message,
            b.level,
        ))
    });
    findings.dedup();
    findings
}
