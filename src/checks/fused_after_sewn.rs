//! Something is fused to a piece that is already sewn, quilted or folded.
//!
//! ## Why it matters
//! Fusible layers need a flat piece and a flat iron. Over a seam or a fold they crease, and the
//! glue does not hold.
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
//! - fold: strap
//! - fuse: [strap, tab]
//! ```
//!
//! Make the strap.
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
//! - fuse: [strap, tab]
//! - fold: strap
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Sewing, hemming, binding, folding and quilting count as work on a piece; pressing, marking and
//! pinning do not. A step that fuses several pieces too late is told once. That fusing comes first
//! is common practice, no source.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("fused-after-sewn", Group::Work, include_str!("fused_after_sewn.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told = Vec::new();
    for fault in &history.faults {
        let Fault::FusedTooLate { copy, fused, earlier } = fault else { continue };
        // A step that fuses several pieces too late is one fault.
        if told.contains(&(fused.step, earlier.step)) {
            continue;
        }
        told.push((fused.step, earlier.step));
        findings.push(
            CHECK
                .at(fused.verb, format!("`{copy}` is fused after it was worked on in step {}", earlier.step))
                .hint(format!("fuse while the pieces are flat: move this before {}", that_step(earlier, fused)))
                .note(earlier.verb, format!("worked on here, in step {}", earlier.step))
                .in_size(edition.size(), ""),
        );
    }
}
