//! A corner is boxed by measuring, and the work does not say which corner.
//!
//! ## Why it matters
//! The depth of a base follows from the corner: side seam on base seam. Another pair of edges is another bag.
//!
//! ## Wrong
//! ````md
//! ## Box the corners {#box}
//!
//! ```work
//! - {box: [front.left, front.right, back.left, back.right], up: 3 cm (1 3/16 in), stitch: 2.5 mm}
//! ```
//!
//! Box the corner, {3 cm (1 3/16 in)} up from the stitching.
//! ````
//!
//! ## Right
//! ````md
//! ## Box the corners {#box}
//!
//! ```work
//! - {box: [front.left, front.bottom, back.left, back.bottom], up: 3 cm (1 3/16 in), stitch: 2.5 mm}
//! ```
//!
//! Box the corner, {3 cm (1 3/16 in)} up from the stitching.
//! ````
//!
//! ## Limits
//! Asks for two edges of each layer that meet in a corner.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("corner-unclear", Group::Work, include_str!("corner_unclear.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NoCorner { copy, edges, boxed } = fault else { continue };
        let what = match edges {
            2 => format!("the two edges of `{copy}` that are named here do not meet in a corner"),
            count => format!("a corner of `{copy}` is where two edges meet, and {count} are named here"),
        };
        let hint = format!("name the two of each layer: `box: [{copy}.left, {copy}.bottom, …]`");
        findings.push(CHECK.at(boxed.verb, what).hint(hint).in_size(edition.size(), ""));
    }
}
