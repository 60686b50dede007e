//! The booklet's edition is missing from its record of editions.
//!
//! ## Why it matters
//! Makers who bought the booklet before want to know what has changed, and whether their copy is
//! the old one.
//!
//! ## Wrong
//! ```yaml
//! edition: 1.1.0
//! editions:
//!   - {edition: 1.0.0, changes: First edition.}
//! ```
//!
//! ## Right
//! ```yaml
//! edition: 1.1.0
//! editions:
//!   - {edition: 1.1.0, changes: The seam at the base is described more fully.}
//!   - {edition: 1.0.0, changes: First edition.}
//! ```
//!
//! ## Limits
//! Looks at the first entry under `editions:`, which is the newest. Silent when there is no record
//! at all.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("edition-not-recorded", Group::Facts, include_str!("edition_not_recorded.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Looks at the newest entry of the record, where there is a record.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let Some(newest) = facts.editions.first() else { return };
    if newest.edition.text == facts.edition.text {
        return;
    }
    findings.push(
        CHECK
            .at(
                facts.edition.span,
                format!(
                    "this is edition {}, but the newest in the record is {}",
                    facts.edition.text, newest.edition.text
                ),
            )
            .hint("add an entry to `editions:` that says what changed, newest first")
            .note(newest.edition.span, "the newest in the record"),
    );
}
