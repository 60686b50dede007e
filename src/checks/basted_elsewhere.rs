//! What was basted to one edge is caught in the seam of another.
//!
//! ## Why it matters
//! It hangs on the first edge, and the second seam misses it: one of the two steps names the wrong side.
//!
//! ## Wrong
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
//! - {sew: [strap_top.right, strap_under.right], allowance: seam, stitch: 2.5 mm, catch: tab.top}
//! ```
//!
//! Baste the tab to the strap, and sew the ends.
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
//! - {baste: [tab.top, strap_top.right], stitch: 4 mm}
//! - {sew: [strap_top.left, strap_under.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap_top.right, strap_under.right], allowance: seam, stitch: 2.5 mm, catch: tab.top}
//! ```
//!
//! Baste the tab to the strap, and sew the ends.
//! ````
//!
//! ## Limits
//! Looks at what a seam names under `catch:` and a seam over another edge holds already, since it was basted there.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("basted-elsewhere", Group::Work, include_str!("basted_elsewhere.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::BastedElsewhere { edge, to, basted, caught } = fault else { continue };
        findings.push(
            CHECK
                .at(
                    basted.verb,
                    format!(
                        "`{edge}` is basted to `{to}` here, and {} catches it in another seam",
                        that_step(caught, basted)
                    ),
                )
                .hint("baste it to an edge of the seam that catches it, or name it in the seam over this edge")
                .note(caught.verb, "caught here")
                .in_size(edition.size(), ""),
        );
    }
}
