//! One edition stands twice in the record of editions.
//!
//! ## Why it matters
//! A maker looks up what changed since her copy. With two entries for one edition she cannot tell which of them is
//! hers, and most likely the newer one was never given its number.
//!
//! ## Wrong
//! ```yaml
//! edition: 1.1.0
//! editions:
//!   - {edition: 1.1.0, changes: The gap is longer.}
//!   - {edition: 1.1.0, changes: The base is described more fully.}
//!   - {edition: 1.0.0, changes: First edition.}
//! ```
//!
//! ## Right
//! ```yaml
//! edition: 1.2.0
//! editions:
//!   - {edition: 1.2.0, changes: The gap is longer.}
//!   - {edition: 1.1.0, changes: The base is described more fully.}
//!   - {edition: 1.0.0, changes: First edition.}
//! ```
//!
//! ## Limits
//! `1.1` and `1.1.0` are one edition.

use super::judge::{Judge, Subject};
use super::releases::same;
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("edition-twice", Group::Facts, include_str!("edition_twice.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every entry of the record that has a twin below it.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let record = &subject.draft.facts.editions;
    for (at, entry) in record.iter().enumerate() {
        let twin = record[at + 1..].iter().find(|other| same(&other.edition.text, &entry.edition.text));
        let Some(twin) = twin else { continue };
        // The newest stands first, so that the one above has the number that was counted on; the other was left.
        findings.push(
            CHECK
                .at(twin.edition.span, format!("edition {} stands twice in the record", entry.edition.text))
                .hint("give each of the two a number of its own, or make one entry of both")
                .note(entry.edition.span, "the other one"),
        );
    }
}
