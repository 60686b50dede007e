//! What is pinned to each other is not what is sewn together.
//!
//! ## Why it matters
//! The maker pins what the step names and finds another edge in the seam: one of the two steps names the wrong one, and nobody
//! knows which.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   flap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab, flap]
//! - pin: [strap.top, flap.top]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap.bottom, flap.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Pin the long edges, and sew them.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   flap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab, flap]
//! - pin: [strap.top, tab.top]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap.bottom, flap.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Pin the long edges, and sew them.
//! ````
//!
//! ## Limits
//! Looks at two edges of different pieces that are pinned before either is sewn, and at whole pieces: the first seam that holds
//! one of them holds the other too, or some later stitch joins the two. Pins in rows, on folds and on zips are left alone.
//! Where the pinned are of one cloth and what is sewn to one of them is of another, it is told at the seam.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("pinned-otherwise", Group::Work, include_str!("pinned_otherwise.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::PinnedOtherwise { pinned: (own, other), at, instead, sewn, alike } = fault else { continue };
        if let (true, Some(instead)) = (alike, instead) {
            let pinned = that_step(at, sewn);
            findings.push(
                CHECK
                    .at(
                        sewn.verb,
                        format!("`{own}` is sewn to `{instead}` here, and was pinned to `{other}` in {pinned}"),
                    )
                    .hint("sew what was pinned, which is of one cloth with it")
                    .note(at.verb, "pinned here")
                    .in_size(edition.size(), ""),
            );
            continue;
        }
        let to = match instead {
            Some(instead) => format!("sewn to `{instead}` in {}", that_step(sewn, at)),
            None => format!("`{other}` is not in the seam of {}", that_step(sewn, at)),
        };
        findings.push(
            CHECK
                .at(at.verb, format!("`{own}` is pinned to `{other}` here, and {to}"))
                .hint("name the same in both: what is pinned is what is sewn")
                .note(sewn.verb, "sewn here")
                .in_size(edition.size(), ""),
        );
    }
}
