//! Less tape or elastic is bought than is cut from it.
//!
//! ## Why it matters
//! The maker cuts the last strap too short, or buys a second time.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   webbing:
//!     kind: tape
//!     name: Cotton webbing
//!     width: 30 mm (1 3/16 in)
//!     amount: 1 m
//!     cut:
//!       strap: {length: 60 cm, count: 2, raw: [start, end]}
//! ```
//! ````md
//! ## Make the straps {#straps}
//!
//! ```work
//! - cut: strap
//! - attach: [strap, front]
//! ```
//!
//! Cut the straps.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   webbing:
//!     kind: tape
//!     name: Cotton webbing
//!     width: 30 mm (1 3/16 in)
//!     amount: 1.3 m
//!     cut:
//!       strap: {length: 60 cm, count: 2, raw: [start, end]}
//! ```
//! ````md
//! ## Make the straps {#straps}
//!
//! ```work
//! - cut: strap
//! - attach: [strap, front]
//! ```
//!
//! Cut the straps.
//! ````
//!
//! ## Limits
//! Adds the lengths under `cut:` of the notion, each as often as it is cut, and holds them against `amount`, or
//! against `length` times `count`. Without either, the amount is reckoned: the sum and the `spare` under `sheets:`, up
//! to the next 10 cm.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Dimension, Exact};
use crate::model::NotionFigure;
use crate::resolve::{Edition, NotionRow};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("tape-too-short", Group::Work, include_str!("tape_too_short.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every notion of one size that something is cut from.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for row in &edition.notions {
        let Some(needed) = row.needed else { continue };
        let Some(bought) = bought(row).filter(|bought| *bought < needed.quantity.value) else { continue };
        let notion = &edition.draft.facts.notions[row.notion];
        let (needed, bought) = (
            super::words::length(edition, crate::measure::to_f64(needed.quantity.value)),
            super::words::length(edition, crate::measure::to_f64(bought)),
        );
        findings.push(
            CHECK
                .at(notion.id.span, format!("less of `{}` is bought than is cut from it", notion.id.text))
                .hint("state more, or leave its amount out to have it reckoned")
                .in_size(edition.size(), format!("{needed} are cut, {bought} are bought")),
        );
    }
}

/// What is bought, in mm; `None` where that is no length.
fn bought(row: &NotionRow) -> Option<Exact> {
    let length = |figure: NotionFigure| {
        let exact = row.figures.get(&figure)?.exact;
        (exact.dimension == Dimension::Length).then_some(exact.value)
    };
    let each = || length(NotionFigure::Length)?.checked_mul(Exact::from_integer(i64::from(row.count.unwrap_or(1))));
    length(NotionFigure::Amount).or_else(each)
}
