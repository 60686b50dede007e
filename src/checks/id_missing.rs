//! A step has no id of its own.
//!
//! ## Why it matters
//! The id is how a step is known from one edition to the next, and on a page that a maker has open
//! beside the machine. Without one it is made from the heading, and changes with every word of it.
//!
//! ## Wrong
//! ````md
//! ## Press the seams
//!
//! Press the seams open.
//! ````
//!
//! ## Right
//! ````md
//! ## Press the seams {#press-seams}
//!
//! Press the seams open.
//! ````
//!
//! ## Limits
//! Looks at steps, not at parts.

use std::collections::BTreeSet;

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group};
use crate::resolve::slug;
use crate::syntax::plain_inline;

/// The check.
pub(super) static CHECK: Judge =
    Judge::booklet(&Check::warning("id-missing", Group::Words, include_str!("id_missing.rs")).waivable(), run);

/// Looks at every step.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let mut told = BTreeSet::new();
    for part in &subject.draft.parts {
        // A shared part that is listed twice is told once.
        for step in part.steps.iter().filter(|step| step.id.is_none() && told.insert(step.span)) {
            let name = slug(&plain_inline(&step.title), "step");
            // A long heading makes a poor name: its first words are enough.
            let short: Vec<&str> = name.split('-').take(3).collect();
            findings.push(
                CHECK
                    .at(step.span, "this step has no id")
                    .hint(format!("write one behind the heading, such as `{{#{}}}`", short.join("-"))),
            );
        }
    }
}
