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

use std::cmp::Ordering;

use super::judge::{Judge, Subject};
use super::releases::{by_number, same};
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
    // A record that begins with its oldest entry is told by `editions-out-of-order`.
    let recorded = facts.editions.iter().any(|entry| same(&entry.edition.text, &facts.edition.text));
    let turned = by_number(&newest.edition.text, &facts.edition.text) == Some(Ordering::Less);
    if newest.edition.text == facts.edition.text || recorded && turned {
        return;
    }
    let hint = match recorded {
        true => format!("raise `edition:` to {}, or take out what is not published yet", newest.edition.text),
        false => "add an entry to `editions:` that says what changed, newest first".to_owned(),
    };
    findings.push(
        CHECK
            .at(
                facts.edition.span,
                format!(
                    "this is edition {}, but the newest in the record is {}",
                    facts.edition.text, newest.edition.text
                ),
            )
            .hint(hint)
            .note(newest.edition.span, "the newest in the record"),
    );
}
