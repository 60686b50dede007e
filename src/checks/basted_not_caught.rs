//! What was basted to an edge is never caught in a seam.
//!
//! ## Why it matters
//! Basting holds a loop, a tab or a fin until the seam over its edge is sewn. Without that seam it comes off.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {baste: [tab.top, strap.left], stitch: 4 mm}
//! ```
//!
//! Baste the tab to the end of the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: {strap_top: Upper strap, strap_under: Lower strap}}}
//!   tab: {outline: {rectangle: [5 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {baste: [tab.top, strap_top.left], stitch: 4 mm}
//! - {sew: [strap_top.left, strap_under.left], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Baste the tab to the end of the strap, and sew the two straps together over it.
//! ````
//!
//! ## Limits
//! Looks at edges of different pieces that are basted to each other. Any lasting stitch over one of them counts: a
//! seam, a hem, a binding, topstitching; so does one over a layer that is quilted, fused or basted as one to it, and what is
//! basted to something that is caught is caught with it. Layers basted as one, and a basting of whole pieces, are left alone.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("basted-not-caught", Group::Work, include_str!("basted_not_caught.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NeverCaught { edges, basted } = fault else { continue };
        findings.push(
            CHECK
                .at(basted.verb, format!("no seam catches what is basted here: {}", edges.join(", ")))
                .hint("sew a seam over one of these edges in a later step, or name what is caught below its seam: `catch: tab.top`")
                .in_size(edition.size(), ""),
        );
    }
}
