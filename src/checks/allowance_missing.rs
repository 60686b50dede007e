//! A step sews and does not say how far from the edge.
//!
//! ## Why it matters
//! A seam sewn at another distance than the pattern reckons with makes the whole thing larger or
//! smaller, twice over for each seam.
//!
//! ## Wrong
//! ````md
//! ## Sew the flap {#flap}
//!
//! ```work
//! - sew: [front.top, back.top]
//!   stitch: 2.5 mm
//! ```
//!
//! Sew the top edge.
//! ````
//!
//! ## Right
//! ````md
//! ## Sew the flap {#flap}
//!
//! ```work
//! - sew: [front.top, back.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Sew the top edge.
//! ````
//!
//! ## Limits
//! Looks at `sew` and `box`. Topstitching, hems, binding and quilting keep their distance in their
//! own ways and are not asked for it. The allowance is printed with the step, so it need not be in
//! the words as well.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("allowance-missing", Group::Work, include_str!("allowance_missing.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every work fact that joins layers at a distance from an edge.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for (_, step) in subject.draft.steps() {
        for work in &step.works {
            // A corner that is boxed by measuring has its place from that.
            if work.verb.joins_at_allowance() && work.allowance.is_none() && work.up.is_none() {
                findings.push(
                    CHECK
                        .at(work.verb_span, format!("this `{}` names no seam allowance", work.verb.word()))
                        .hint("add a line below it: `allowance: 1 cm`, or the name of a measurement")
                        .note(step.span, "in this step"),
                );
            }
        }
    }
}
