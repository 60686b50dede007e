//! A step says nothing: no words, no work, no diagram.
//!
//! ## Why it matters
//! A numbered step without words stops the maker: is something missing from the page, or is there
//! nothing to do?
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! ## Finish {#finish}
//!
//! Trim the threads.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Every seam should be caught at both ends.
//!
//! ## Finish {#finish}
//!
//! Trim the threads.
//! ````
//!
//! ## Limits
//! Work alone does not make a step: it is facts, not a sentence. A diagram alone does, since it
//! comes with its words.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("step-empty", Group::Words, include_str!("step_empty.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for (_, step) in subject.draft.steps() {
        if step.body.is_empty() {
            let message = if step.works.is_empty() { "this step is empty" } else { "this step has no words" };
            findings.push(
                CHECK.at(step.span, message).hint("say below the heading what the maker does, or take the step out"),
            );
        }
    }
}
