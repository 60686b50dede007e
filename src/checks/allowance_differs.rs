//! A step sews at another allowance than the piece was cut with.
//!
//! ## Why it matters
//! A piece that was cut for one allowance and is sewn at another comes out larger or smaller, by
//! the difference at each seam.
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
//!   allowance: 5 mm (3/16 in)
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
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at `sew`, `hem`, `bind` and `box`, on edges that are named; whole pieces are passed over, and so are
//! edges whose piece states no allowance, and edges cut without one (`top: 0 cm`) that a strip encloses. One finding for each work fact. What follows for the
//! finished measurements is not told beside it.

use super::apart::Told;
use super::judge::Judge;
use super::words::handed;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("allowance-differs", Group::Work, include_str!("allowance_differs.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::AllowanceDiffers { edge, piece, own, taken, sewn, stated } = fault else { continue };
        let told = Told::lengths(edition, *own, *taken);
        let here = if told.apart.is_empty() { String::new() } else { format!(", and this is {}", told.other) };
        let handed = handed(edition, *sewn, edge);
        let finding = CHECK
            .at(handed.unwrap_or(*stated), format!("`{edge}` is sewn at another allowance than it was cut with"))
            .hint("sew at the piece's own allowance, or change `allowance:` of the piece")
            .note(sewn.heading, "in this step")
            .in_size(edition.size(), format!("the piece has {} here{here}", told.one));
        let finding = if handed.is_some() { finding.note(*stated, "its allowance") } else { finding };
        findings.push(finding.note(edition.draft.facts.pieces[*piece].id.span, "the piece"));
    }
}
