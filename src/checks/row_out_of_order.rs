//! Edges in a row do not follow each other, though in another order they would.
//!
//! ## Why it matters
//! A row is sewn from its first edge to its last. When two that follow each other in it are not joined, the maker lays
//! the band from the wrong end, and the opening that should lie between its ends is sewn shut.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   panel: {outline: {rectangle: [20 cm, 10 cm]}, allowance: seam, raw: all, cut: {outer: [left, middle, right]}}
//!   band: {outline: {rectangle: [56 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the panels and the band {#band}
//!
//! ```work
//! - cut: [panel, band]
//! - {sew: [left.right, middle.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [middle.right, right.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [[middle.top, left.top, right.top], band.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the panels to each other and the band to them.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   panel: {outline: {rectangle: [20 cm, 10 cm]}, allowance: seam, raw: all, cut: {outer: [left, middle, right]}}
//!   band: {outline: {rectangle: [56 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the panels and the band {#band}
//!
//! ```work
//! - cut: [panel, band]
//! - {sew: [left.right, middle.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [middle.right, right.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [[left.top, middle.top, right.top], band.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the panels to each other and the band to them.
//! ````
//!
//! ## Limits
//! Looks at rows of three to seven edges in `sew`. Two edges are joined by a seam that reaches the corner where they
//! meet, by a lap, or as neighbours of one piece; a seam that is left open there for a notion, such as a zip, joins them
//! only where the other side of the seam is a row as well. Silent where no other order would be joined all along.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("row-out-of-order", Group::Work, include_str!("row_out_of_order.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::RowParted { apart: (one, other), order, sewn } = fault else { continue };
        findings.push(
            CHECK
                .at(sewn.verb, format!("`{one}` and `{other}` follow each other in this row, and are not joined there"))
                .hint(format!("as they are sewn, they follow each other so: `[{}]`", order.join(", ")))
                .in_size(edition.size(), ""),
        );
    }
}
