//! A gap is longer than the seam that it is left in.
//!
//! ## Why it matters
//! A gap that takes the whole seam leaves nothing to sew; one that reaches past the end of the edge cannot be
//! measured off. In a small size the same gap may be too long.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: 35 cm}
//! - close: strap.top
//!   by: hand
//! ```
//!
//! Sew and leave a gap, turn and close.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: 8 cm}
//! - close: strap.top
//!   by: hand
//! ```
//!
//! Sew and leave a gap, turn and close.
//! ````
//!
//! ## Limits
//! Holds `leave` against the shortest side of its seam, and from `at:` against what is left of the first edge.
//! How long a gap a hand needs is yours to judge.

use super::apart::millimetres;
use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::{Edition, Worked};

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("gap-too-long", Group::Work, include_str!("gap_too_long.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::GapTooLong { edge, room, gap, leave } = fault else { continue };
        let told = |length: f64| {
            let worked = Worked { quantity: millimetres(length), stated: None };
            edition.figures(&worked).first.to_string().replace('\u{a0}', " ")
        };
        findings.push(
            CHECK
                .at(*leave, format!("this gap of {} does not fit: `{edge}` has {} for it", told(*gap), told(*room)))
                .hint("leave a shorter gap, or one by size; leave it in a longer edge")
                .in_size(edition.size(), ""),
        );
    }
}
