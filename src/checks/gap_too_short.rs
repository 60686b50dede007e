//! A gap is left through which nothing passes.
//!
//! ## Why it matters
//! A formula came to nothing: there is no gap to turn the work through.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: seam - seam}
//! - {close: strap.top, by: hand}
//! ```
//!
//! Sew the long edge, leave a gap of {leave}, and close it.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: 6 cm (2 3/8 in)}
//! - {close: strap.top, by: hand}
//! ```
//!
//! Sew the long edge, leave a gap of {leave}, and close it.
//! ````
//!
//! ## Limits
//! Looks at every `leave:`, in each size, for less than 3 mm (common practice, no source).

use super::judge::Judge;
use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("gap-too-short", Group::Work, include_str!("gap_too_short.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::GapTooShort { gap, leave } = fault else { continue };
        findings.push(
            CHECK
                .at(*leave, format!("nothing passes through a gap of {}", length(edition, *gap)))
                .hint("leave as much as a hand or the turned work needs, or take `leave:` out")
                .in_size(edition.size(), ""),
        );
    }
}
