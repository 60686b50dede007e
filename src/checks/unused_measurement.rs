//! A measurement is defined and nothing uses it.

use std::collections::BTreeSet;

use super::Subject;
use crate::diag::{Finding, Findings};

/// Looks at every measurement over all sizes.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let used: BTreeSet<String> = subject.editions.iter().flat_map(|edition| edition.sheet.used()).collect();
    for measurement in &subject.draft.facts.measurements {
        if !used.contains(&measurement.name.text) {
            findings.push(
                Finding::warning(
                    "unused-measurement",
                    measurement.name.span,
                    format!("nothing uses `{}`", measurement.name.text),
                )
                .hint("name it where it is meant, or take it out"),
            );
        }
    }
}
