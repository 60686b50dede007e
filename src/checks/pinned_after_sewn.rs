//! Edges are pinned after they have been sewn.
//!
//! ## Why it matters
//! Pins hold layers for the seam that comes next. A pin that follows its seam is a step in the
//! wrong place, and the maker wonders what she is to sew.
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
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - pin: [strap.top, tab.top]
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
//! - pin: [strap.top, tab.top]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at `pin` with exactly two edges that one seam holds already. A step that pins several
//! pairs too late is told once.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("pinned-after-sewn", Group::Work, include_str!("pinned_after_sewn.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told = Vec::new();
    for fault in &history.faults {
        let Fault::PinnedTooLate { edges, pinned, sewn } = fault else { continue };
        // A step that pins several edges too late is one fault.
        if told.contains(&(pinned.step, sewn.step)) {
            continue;
        }
        told.push((pinned.step, sewn.step));
        findings.push(
            CHECK
                .at(pinned.verb, format!("`{}` and `{}` are pinned after they are sewn", edges.0, edges.1))
                .hint(format!("pin first: move this before {}", that_step(sewn, pinned)))
                .note(sewn.verb, format!("sewn here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
