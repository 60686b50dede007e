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
//!   elastic: {kind: elastic, name: Elastic, width: 1 cm (3/8 in), length: 20 cm (7 7/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - insert: [elastic, strap.top]
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm}
//! ```
//!
//! Hem the top of the strap and pass the elastic through.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 1 cm (3/8 in), length: 20 cm (7 7/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm}
//! - insert: [elastic, strap.top]
//! ```
//!
//! Hem the top of the strap and pass the elastic through.
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
