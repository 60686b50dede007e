//! Elastic or tape is passed into a casing, and nothing says how long it is.
//!
//! ## Why it matters
//! The length of the elastic decides how tight the thing sits, and it cannot be read off the pattern.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 5 mm (1/4 in)}
//! ```
//! ````md make.md
//! # Make the pouch
//!
//! ## Cut and sew {#sew}
//!
//! ```work
//! - cut: side
//! - {hem: [front.top, back.top], allowance: seam, stitch: 2.5 mm}
//! - insert: [elastic, front.top, back.top]
//! - {sew: [front.left, back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.right, back.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Hem the top, pass the elastic through and sew the sides.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 5 mm (1/4 in), length: [24 cm (9 1/2 in), 30 cm (11 3/4 in)]}
//! ```
//! ````md make.md
//! # Make the pouch
//!
//! ## Cut and sew {#sew}
//!
//! ```work
//! - cut: side
//! - {hem: [front.top, back.top], allowance: seam, stitch: 2.5 mm}
//! - insert: [elastic, front.top, back.top]
//! - {sew: [front.left, back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.right, back.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Hem the top, pass the elastic through and sew the sides.
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
