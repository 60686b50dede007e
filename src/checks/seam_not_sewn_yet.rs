//! A seam is graded or understitched before it is sewn.
//!
//! ## Why it matters
//! Allowances can be cut to two widths, or stitched to a facing, only once a seam holds them. The maker who
//! follows the steps in their order cuts away what she is still to sew.
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
//! - grade: [strap.top, tab.top]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew and grade.
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
//! - grade: [strap.top, tab.top]
//! ```
//!
//! Sew and grade.
//! ````
//!
//! ## Limits
//! Looks at `grade` and `understitch`; a whole piece counts as sewn where any seam holds it. `trim` and `clip` may
//! come before a seam, and are not looked at.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("seam-not-sewn-yet", Group::Work, include_str!("seam_not_sewn_yet.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::SeamNotSewnYet { edge, done, sewn } = fault else { continue };
        let finding = CHECK.at(done.verb, format!("no seam holds `{edge}` yet"));
        let finding = match sewn {
            Some(sewn) => finding
                .hint(format!("move this behind {}", that_step(sewn, done)))
                .note(sewn.verb, format!("sewn here, in step {}", sewn.step)),
            None => finding.hint("sew the edge first, or name the edge that the seam holds"),
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}
