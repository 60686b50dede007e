//! An entry in the record of editions is older than the one below it, by its number or by its day.
//!
//! ## Why it matters
//! The record is printed as it stands, the newest edition first. Where a number or a day falls instead of rising, one of
//! the two is wrong, and makers take an old copy for the new one.
//!
//! ## Wrong
//! ```yaml
//! edition: 1.1.0
//! editions:
//!   - {edition: 1.1.0, date: 2025-05-09, changes: The base is described more fully.}
//!   - {edition: 1.0.0, date: 2026-01-15, changes: First edition.}
//! ```
//!
//! ## Right
//! ```yaml
//! edition: 1.1.0
//! editions:
//!   - {edition: 1.1.0, date: 2026-05-09, changes: The base is described more fully.}
//!   - {edition: 1.0.0, date: 2026-01-15, changes: First edition.}
//! ```
//!
//! ## Limits
//! Numbers are compared part by part, so that 1.10 is newer than 1.9. An edition with a name instead of a number is
//! held against its neighbour by the day alone. Two editions of one day are in order.

use std::cmp::Ordering;

use super::judge::{Judge, Subject};
use super::releases::{by_number, same};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::model::{Date, Release};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("editions-out-of-order", Group::Facts, include_str!("editions_out_of_order.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Holds every entry against the one below it.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let record = &subject.draft.facts.editions;
    let pairs: Vec<(&Release, &Release)> = record.iter().zip(record.iter().skip(1)).collect();
    let falls = |pair: &(&Release, &Release)| numbers(pair.0, pair.1) == Some(Ordering::Less);
    if !pairs.is_empty() && pairs.iter().all(falls) {
        findings.push(turned_round(&record[0], &record[record.len() - 1]));
        return;
    }
    for (newer, older) in pairs {
        // The booklet's own day stands at its head too.
        let stated = newer.date.as_ref().zip(subject.draft.facts.date.as_ref());
        let sure = stated.is_some_and(|(one, other)| {
            one.text == other.text && same(&newer.edition.text, &subject.draft.facts.edition.text)
        });
        findings.extend(number_falls(newer, older).or_else(|| day_falls(newer, older, sure)));
    }
}

fn numbers(one: &Release, other: &Release) -> Option<Ordering> {
    by_number(&one.edition.text, &other.edition.text)
}

fn turned_round(first: &Release, last: &Release) -> Finding {
    CHECK
        .at(first.edition.span, format!("the record begins with its oldest edition, {}", first.edition.text))
        .hint("turn its order round: the newest entry stands first")
        .note(last.edition.span, "the newest")
}

fn number_falls(newer: &Release, older: &Release) -> Option<Finding> {
    let (here, below) = (&newer.edition, &older.edition);
    let finding =
        CHECK.at(here.span, format!("edition {} stands above {}, which is the newer one", here.text, below.text));
    let finding =
        finding.hint("put the newest entry first, or mend the number that is wrong").note(below.span, "below it");
    (numbers(newer, older) == Some(Ordering::Less)).then_some(finding)
}

/// Where the newer day is sure, the older one is wrong.
fn day_falls(newer: &Release, older: &Release, sure: bool) -> Option<Finding> {
    let (here, below) = (newer.date.as_ref()?, older.date.as_ref()?);
    let (day, before) = (Date::parse(&here.text)?, Date::parse(&below.text)?);
    let (one, other) = (&newer.edition.text, &older.edition.text);
    let hint = "mend the day that is wrong, or the order of the entries";
    let finding = if sure {
        let message = format!("edition {other} is of {}, after the {} of edition {one}", before.spoken(), day.spoken());
        CHECK.at(below.span, message).hint(hint).note(here.span, "the newer edition")
    } else {
        let message =
            format!("edition {one} is of {}, before the {} of edition {other}", day.spoken(), before.spoken());
        CHECK.at(here.span, message).hint(hint).note(below.span, "the older edition")
    };
    (day < before).then_some(finding)
}
