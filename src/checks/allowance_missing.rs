//! A step sews and does not say how far from the edge.

use super::Subject;
use crate::diag::{Finding, Findings};

/// Looks at every work fact that joins layers at a distance from an edge.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for (_, step) in subject.draft.steps() {
        for work in &step.works {
            if work.verb.joins_at_allowance() && work.allowance.is_none() {
                findings.push(
                    Finding::error("allowance-missing", work.verb_span, format!("this `{}` names no seam allowance", work.verb.word()))
                        .hint("add a line below it: `allowance: 1 cm`, or the name of a measurement")
                        .note(step.span, "in this step"),
                );
            }
        }
    }
}
