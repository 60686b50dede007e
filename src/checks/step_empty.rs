//! A step says nothing: no words, no work, no diagram.

use super::Subject;
use crate::diag::{Finding, Findings};

/// Looks at every step.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for (_, step) in subject.draft.steps() {
        if step.body.is_empty() {
            let message = if step.works.is_empty() { "this step is empty" } else { "this step has no words" };
            findings.push(
                Finding::error("step-empty", step.span, message)
                    .hint("say below the heading what the maker does, or take the step out"),
            );
        }
    }
}
