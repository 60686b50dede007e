//! An allowance stays raw inside, where the booklet asks that every edge is finished.
//!
//! ## Why it matters
//! `finishing: required` in the facts says that the inside is to be as clean as the outside. One seam that is
//! forgotten frays.
//!
//! ## Wrong
//! ```yaml
//! finishing: required
//! ```
//! ````md
//! # Make the pouch
//!
//! ## Make it {#make}
//!
//! ```work
//! - cut: side
//! - hem: [front.top, back.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - {sew: [front.left, back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.right, back.right], allowance: seam, stitch: 2.5 mm}
//! - turn: [front, back, right side out]
//! ```
//!
//! Lay the pieces [](term:right sides together), sew three sides, and turn the pouch.
//! ````
//!
//! ## Right
//! ```yaml
//! finishing: required
//! ```
//! ````md
//! # Make the pouch
//!
//! ## Make it {#make}
//!
//! ```work
//! - cut: side
//! - finish: [front.left, back.left, front.bottom, back.bottom, front.right, back.right]
//!   by: overlock
//! - hem: [front.top, back.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - {sew: [front.left, back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.right, back.right], allowance: seam, stitch: 2.5 mm}
//! - turn: [front, back, right side out]
//! ```
//!
//! Lay the pieces [](term:right sides together), sew three sides, and turn the pouch.
//! ````
//!
//! ## Limits
//! Only with `finishing: required`. An edge counts as finished by `finish`, `hem` or `bind`, and as enclosed where its
//! seam was turned through a gap, holds three layers, is understitched, or belongs to a facing that was turned or to a
//! band or a yoke that was folded over and stitched down; so are the seams inside such a facing. A bag of two different pieces passes when `turn` names only one of them.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("edge-not-finished", Group::Work, include_str!("edge_not_finished.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NotFinished { edges, sewn } = fault else { continue };
        let named = edges.join(", ");
        findings.push(
            CHECK
                .at(sewn.verb, format!("the allowances of this seam stay raw: `{}`", edges.join("`, `")))
                .hint(format!("add a step: `- finish: [{named}]` with `by: overlock`, or enclose them"))
                .in_size(edition.size(), ""),
        );
    }
}
