//! Elastic or tape is passed into a casing, and nothing says how long it is.
//!
//! ## Why it matters
//! The length of the elastic decides how tight the thing sits, and it cannot be read off the pattern.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 1 cm (3/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm}
//! - insert: [elastic, strap.top]
//! ```
//!
//! Hem the top of the strap and pass the elastic through.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 1 cm (3/8 in), length: 20 cm (7 7/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm}
//! - insert: [elastic, strap.top]
//! ```
//!
//! Hem the top of the strap and pass the elastic through.
//! ````
//!
//! ## Limits
//! Looks at notions of the kinds `elastic` and `tape` that a step inserts. `length` and `amount` both count.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Kind, NotionFigure, Verb};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("notion-length-missing", Group::Work, include_str!("notion_length_missing.rs"))
        .waivable_in(Home::Facts),
    run,
);

/// Looks at every notion that the steps of one size insert.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let inserts = || edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Insert);
    for row in &edition.notions {
        let notion = &edition.draft.facts.notions[row.notion];
        let passes = matches!(notion.kind, Kind::Elastic | Kind::Tape);
        let inserted = inserts().flat_map(|work| &work.targets).any(|target| target.notion() == Some(row.notion));
        // A figure with a fault is told where it stands.
        let stated = [NotionFigure::Length, NotionFigure::Amount].iter().any(|one| notion.figures.contains_key(one));
        if !passes || !inserted || stated {
            continue;
        }
        findings.push(
            CHECK
                .at(notion.id.span, format!("nothing says how long `{}` is", notion.id.text))
                .hint("give it a `length:`, such as `length: \"elastic_length(waist, 10 %, 2 cm)\"`")
                .in_size(edition.size(), ""),
        );
    }
}
