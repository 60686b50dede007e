//! A seam is closed that has no gap.
//!
//! ## Why it matters
//! The gap is elsewhere and stays open, or it was forgotten, and there is nothing to turn through.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {close: strap.top, by: hand}
//! ```
//!
//! Sew the long edge, and close it.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: 6 cm (2 3/8 in)}
//! - {close: strap.top, by: hand}
//! ```
//!
//! Sew the long edge, leave a gap, and close it.
//! ````
//!
//! ## Limits
//! Looks at `close` with edges that seams hold from end to end and that have no gap. An end that no seam holds is turned in and
//! closed; of whole pieces nobody knows which seam is meant.
//! Two hemmed edges that no seam holds have no gap either, unless something was filled or passed in before.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("nothing-to-close", Group::Work, include_str!("nothing_to_close.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NothingToClose { edge, closed, open, sewn, hemmed } = fault else { continue };
        let finding = match open {
            Some(open) => CHECK
                .at(closed.verb, format!("the seam at `{edge}` has no gap to close"))
                .hint(format!("a gap is open at `{open}`: name that one"))
                .note(sewn.verb, "its seam"),
            None if *hemmed => CHECK
                .at(closed.verb, format!("`{edge}` is hemmed, and no gap was left in it to close"))
                .hint("take this out, or `sew` the two edges together if they are to be one")
                .note(sewn.verb, "hemmed here"),
            // With nothing open, the seam is where something is missing.
            None => CHECK
                .at(sewn.verb, format!("this seam is closed at `{edge}` later, and leaves no gap"))
                .hint("leave a gap in it, with `leave:`, or take the step out that closes it")
                .note(closed.verb, "closed here"),
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}
