//! Two edges are finished and never sewn to each other, though two others like them are.
//!
//! ## Why it matters
//! An edge that was overlocked looks done. When one of a pair of seams is forgotten, its edges hang open, and nothing
//! else tells.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   cover: {outline: {rectangle: [10 cm, 8 cm]}, fold: left, allowance: seam, raw: [top, bottom], cut: {outer: [cover_front, cover_back]}}
//! ```
//! ````md
//! ## Sew the cover {#cover}
//!
//! ```work
//! - cut: cover
//! - {finish: [cover_front.left, cover_front.right, cover_back.left, cover_back.right], by: overlock}
//! - {sew: [cover_front.left, cover_back.left], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the sides.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   cover: {outline: {rectangle: [10 cm, 8 cm]}, fold: left, allowance: seam, raw: [top, bottom], cut: {outer: [cover_front, cover_back]}}
//! ```
//! ````md
//! ## Sew the cover {#cover}
//!
//! ```work
//! - cut: cover
//! - {finish: [cover_front.left, cover_front.right, cover_back.left, cover_back.right], by: overlock}
//! - {sew: [cover_front.left, cover_back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [cover_front.right, cover_back.right], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the sides.
//! ````
//!
//! ## Limits
//! Like edges are those of both halves of a piece cut on the fold, and the same edge of copies of one piece in one cloth.
//! Silent where only one edge of the pair hangs free, where an edge was folded or stitched to anything, and where no
//! like of it is sewn, as at the lower edges of facings.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("seam-forgotten", Group::Work, include_str!("seam_forgotten.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::SeamForgotten { edges: (one, other), like: (like, partner), finished, sewn } = fault else {
            continue;
        };
        findings.push(
            CHECK
                .at(finished.verb, format!("`{one}` and `{other}` are finished, and never sewn to anything"))
                .hint(format!("add the seam: `- sew: [{one}, {other}]`; edges that are to hang free say `raw:`"))
                .note(sewn.verb, format!("`{like}` and `{partner}` are sewn to each other"))
                .in_size(edition.size(), ""),
        );
    }
}
