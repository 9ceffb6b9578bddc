//! Mends that take long.

use std::collections::BTreeMap;

use super::{Check, Facts, Finding, find};
use crate::limits;

/// Adds the mends that take long to findings that have none, until `stop` says that nobody waits for them any more.
pub(super) fn mend(facts: &Facts<'_>, findings: &mut [Finding], stop: &dyn Fn() -> bool) {
    let mut found = 0;
    let mut failed: BTreeMap<&str, usize> = BTreeMap::new();
    for finding in findings.iter_mut().filter(|finding| wanted(finding)) {
        let Ok(check) = find(finding.name) else { continue };
        let failed = failed.entry(finding.name).or_default();
        if *failed == limits::MEND_FAILURES {
            continue;
        }
        if found == limits::LONG_MENDS || stop() {
            return;
        }
        finding.fix = check.mend(facts, finding);
        match finding.fix {
            Some(_) => found += 1,
            None => *failed += 1,
        }
    }
}

/// Whether a finding has no mend and its check may find one.
pub(super) fn wanted(finding: &Finding) -> bool {
    finding.fix.is_none() && find(finding.name).is_ok_and(Check::looks_for_mends)
}
