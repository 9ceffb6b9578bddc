use std::collections::BTreeMap;

use super::{Finding, Fix, FixKind, Info};
use crate::diag::{Anchor, Level, Severity, Trouble};
use crate::ids::PuzzleId;
use crate::kit::edit::Edit;

/// Where a check puts what it finds.
#[derive(Debug)]
pub struct Sink {
    info: &'static Info,
    level: Level,
    findings: Vec<Finding>,
    /// The findings by place, so that none is taken twice.
    places: BTreeMap<Anchor, Vec<usize>>,
}

/// A finding in the making.
#[derive(Clone, Debug)]
pub struct Draft {
    anchor: Anchor,
    message: String,
    severity: Option<Severity>,
    why: Option<String>,
    subject: Option<PuzzleId>,
    help: Vec<String>,
    fix: Option<Fix>,
}

impl Sink {
    /// An empty sink for one check at one level.
    #[must_use]
    pub const fn new(info: &'static Info, level: Level) -> Self {
        Self { info, level, findings: Vec::new(), places: BTreeMap::new() }
    }

    /// Takes a finding.
    pub fn add(&mut self, draft: Draft) {
        let Draft { anchor, message, severity, why, subject, help, fix } = draft;
        let finding = Finding {
            name: self.info.name,
            severity: severity.unwrap_or(self.info.severity),
            level: Some(self.level),
            edition: None,
            anchor,
            message,
            why: why.unwrap_or_else(|| self.info.why.to_owned()),
            subject,
            help,
            fix,
        };
        let here = self.places.entry(finding.anchor.clone()).or_default();
        if !here.iter().any(|at| self.findings.get(*at) == Some(&finding)) {
            here.push(self.findings.len());
            self.findings.push(finding);
        }
    }

    /// All that was found.
    #[must_use]
    pub fn into_findings(self) -> Vec<Finding> {
        self.findings
    }
}

impl Draft {
    /// A finding at a place, in a line.
    pub fn new(anchor: Anchor, message: impl Into<String>) -> Self {
        Self { anchor, message: message.into(), severity: None, why: None, subject: None, help: Vec::new(), fix: None }
    }

    /// A finding that passes a trouble on.
    #[must_use]
    pub fn of(anchor: Anchor, trouble: &Trouble) -> Self {
        let message = match &trouble.place {
            Some(place) => format!("{} ({place})", trouble.message),
            None => trouble.message.clone(),
        };
        Self { help: trouble.hints.clone(), ..Self::new(anchor, message) }
    }

    /// Another severity than the check's own.
    #[must_use]
    pub const fn severity(mut self, severity: Severity) -> Self {
        self.severity = Some(severity);
        self
    }

    /// Why it matters, where there is more to say than the check says in general.
    #[must_use]
    pub fn why(mut self, why: impl Into<String>) -> Self {
        self.why = Some(why.into());
        self
    }

    /// The puzzle whose code it is about, where the anchor is another place.
    #[must_use]
    pub fn about(mut self, puzzle: &PuzzleId) -> Self {
        self.subject = Some(puzzle.clone());
        self
    }

    /// A mend that was made elsewhere.
    #[must_use]
    pub fn with(mut self, fix: Fix) -> Self {
        self.fix = Some(fix);
        self
    }

    /// A way to mend it.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help.push(help.into());
        self
    }

    /// A mend that the program can make.
    #[must_use]
    pub fn fix(mut self, title: impl Into<String>, kind: FixKind, edits: Vec<Edit>) -> Self {
        self.fix = Some(Fix { title: title.into(), kind, edits });
        self
    }
}
