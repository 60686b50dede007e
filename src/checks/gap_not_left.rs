//! Something is turned right side out, and nothing is open to turn it through.
//!
//! ## Why it matters
//! Sewn shut all round, the work cannot be turned right side out; the maker has to unpick a seam
//! and guess where.
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
//! - sew: [strap, tab]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - turn: [strap, right side out]
//! - close: strap
//!   by: hand
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
//! - sew: [strap, tab]
//!   allowance: seam
//!   stitch: 2.5 mm
//!   leave: 8 cm (3 1/8 in)
//! - turn: [strap, right side out]
//! - close: strap
//!   by: hand
//! ```
//!
//! Make the strap, and leave a gap to turn it.
//! ````
//!
//! ## Limits
//! Follows the seams from the pieces that are turned to all that hang on them, and looks for a gap
//! (`leave:`), an edge that is not sewn, or an open zip that no lining closes. Edges that are meant
//! to stay raw, and folds, are no opening. A piece in no seam is turned over, not out.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("gap-not-left", Group::Work, include_str!("gap_not_left.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NothingOpen { turned, closed } = fault else { continue };
        let finding = match closed {
            Some(closed) => CHECK
                .at(turned.verb, "the gap to turn through is closed already")
                .hint(format!("turn first: move this before step {}", closed.step))
                .note(closed.verb, format!("closed here, in step {}", closed.step)),
            None => CHECK
                .at(turned.verb, "nothing is open to turn this through")
                .hint("leave a gap in a seam that is sewn before: `leave: 12 cm`, and close it afterwards"),
        };
        findings.push(finding.note(turned.heading, "in this step").in_size(edition.size(), ""));
    }
}
