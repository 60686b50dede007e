//! Something is passed into a casing that is not sewn yet, or that is shut.
//!
//! ## Why it matters
//! Elastic passes into a casing through a gap that was left for it, or through an end that is not sewn yet.
//! Where there is none, the maker has to unpick the stitching and guess where.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 5 mm (1/4 in), length: 20 cm (7 7/8 in)}
//! ```
//! ````md
//! ## Pass the elastic through {#elastic}
//!
//! ```work
//! - insert: [elastic, front.top]
//! ```
//!
//! Pass the elastic through.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 5 mm (1/4 in), length: 20 cm (7 7/8 in)}
//! ```
//! ````md make.md
//! # Make the pouch
//!
//! ## Cut and sew {#sew}
//!
//! ```work
//! - cut: side
//! - {sew: [front.left, back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.right, back.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [front.bottom, back.bottom], allowance: seam, stitch: 2.5 mm}
//! - {hem: [front.top, back.top], allowance: seam, stitch: 2.5 mm, leave: 3 cm (1 1/8 in)}
//! ```
//!
//! Sew the sides, hem the top and leave a gap.
//!
//! ## Pass the elastic through {#elastic}
//!
//! ```work
//! - insert: [elastic, front.top, back.top]
//! - {close: front.top, stitch: 2.5 mm}
//! ```
//!
//! Pass the elastic through and close the gap.
//! ````
//!
//! ## Limits
//! An edge is a casing once it is sewn, hemmed, bound or folded. It is open at a gap that is not closed, or
//! where an edge beside it is not sewn; a piece is open where one of its edges, or of those that hang on it,
//! is not sewn, and where a zip is sewn in.

use super::judge::Judge;
use crate::construct::{Fault, History, Shut};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("casing-not-open", Group::Work, include_str!("casing_not_open.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::CasingShut { inserted, why } = fault else { continue };
        let at = |message: String| CHECK.at(inserted.verb, message);
        let finding = match why {
            Shut::NoCasing(edge) => at(format!("`{edge}` is no casing yet"))
                .hint(format!("sew it first, such as `hem: {edge}` with `leave:` for the way in")),
            Shut::Sewn(Some(closed)) => at("the gap to pass this through is closed already".to_owned())
                .hint(format!("move this before step {}", closed.step))
                .note(closed.verb, format!("closed here, in step {}", closed.step)),
            Shut::Sewn(None) => at("nothing is open to pass this through".to_owned())
                .hint("leave a gap in the hem or the seam that is sewn before: `leave: 5 cm`, and close it afterwards"),
        };
        findings.push(finding.note(inserted.heading, "in this step").in_size(edition.size(), ""));
    }
}
