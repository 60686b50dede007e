//! An edge is topstitched before the seam that it belongs to is sewn.
//!
//! ## Why it matters
//! Topstitching lies along a seam and holds its layers. On an edge that is not sewn yet it catches
//! one layer, and the seam can no longer be sewn under it.
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
//! - topstitch: strap.top
//!   stitch: 3 mm
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
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
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - press: [strap, along the seam]
//! - topstitch: strap.top
//!   stitch: 3 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at edges that are named in `topstitch` and later in `sew`. An edge that was folded before
//! is in order, and so is one that is never sewn.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("topstitched-before-sewn", Group::Work, include_str!("topstitched_before_sewn.rs"))
        .waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told = Vec::new();
    for fault in &history.faults {
        let Fault::TopstitchedTooSoon { edge, stitched, sewn } = fault else { continue };
        // A step that topstitches several edges too soon is one fault.
        if told.contains(&(stitched.step, sewn.step)) {
            continue;
        }
        told.push((stitched.step, sewn.step));
        findings.push(
            CHECK
                .at(stitched.verb, format!("`{edge}` is topstitched before it is sewn"))
                .hint(format!("sew first: move this after {}", that_step(sewn, stitched)))
                .note(sewn.verb, format!("sewn only here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
