//! The booklet's day is not the one that its record of editions gives.
//!
//! ## Why it matters
//! The day on the cover and the day in the record are of one and the same edition. Where they differ, makers cannot tell
//! whether they hold the newest copy.
//!
//! ## Wrong
//! ```yaml
//! date: 2026-03-01
//! editions:
//!   - {edition: 1.0.0, date: 2026-01-15, changes: First edition.}
//! ```
//!
//! ## Right
//! ```yaml
//! date: 2026-01-15
//! editions:
//!   - {edition: 1.0.0, date: 2026-01-15, changes: First edition.}
//! ```
//!
//! ## Limits
//! Looks at the entry of the booklet's own edition, and tells it at both places. Silent where one of the two states no day. An edition without an
//! entry is told by `edition-not-recorded`.

use super::judge::{Judge, Subject};
use super::releases::same;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Date;

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("date-not-recorded", Group::Facts, include_str!("date_not_recorded.rs")).waivable_in(Home::Facts),
    run,
);

/// Holds the day of the booklet against that of its entry.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let own = facts.editions.iter().find(|entry| same(&entry.edition.text, &facts.edition.text));
    let (Some(date), Some(recorded)) = (&facts.date, own.and_then(|entry| entry.date.as_ref())) else { return };
    let (Some(day), Some(other)) = (Date::parse(&date.text), Date::parse(&recorded.text)) else { return };
    if day == other {
        return;
    }
    // Nobody can know which of the two is the wrong one: it is told at both.
    let hint = "write the same day in both places";
    let edition = &facts.edition.text;
    let here =
        format!("the booklet is of {}, and its record gives {} for edition {edition}", day.spoken(), other.spoken());
    findings.push(CHECK.at(date.span, here).hint(hint).note(recorded.span, "in the record"));
    let there =
        format!("the record gives {} for edition {edition}, and the booklet is of {}", other.spoken(), day.spoken());
    findings.push(CHECK.at(recorded.span, there).hint(hint).note(date.span, "at the head"));
}
