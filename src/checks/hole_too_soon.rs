//! A buttonhole is made before its edge is sewn.
//!
//! ## Why it matters
//! A buttonhole is cut through all the layers that lie there in the end. Made before the facing is sewn on, it
//! is covered by the facing, and the seam runs across it.
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
//! - {buttonhole: strap.top, count: 2}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the holes, then the seam.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {buttonhole: strap.top, count: 2}
//! ```
//!
//! Sew the seam, then the holes.
//! ````
//!
//! ## Limits
//! Looks at buttonholes that name an edge, or a row of marks at most 4 cm from one, and at the seams, hems and
//! bindings of that edge.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("hole-too-soon", Group::Work, include_str!("hole_too_soon.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::HoleTooSoon { edge, holed, sewn } = fault else { continue };
        findings.push(
            CHECK
                .at(holed.verb, format!("this buttonhole is made before `{edge}` is sewn"))
                .hint(format!("move it behind step {}, in which the edge is sewn", sewn.step))
                .note(sewn.verb, "sewn here")
                .in_size(edition.size(), ""),
        );
    }
}
