//! A step leaves a gap, and its words do not say so.
//!
//! ## Why it matters
//! The seam line states the gap, but a maker who follows the words sews on to the end, and unpicks.
//!
//! ## Wrong
//! ````md
//! ## Sew the pouch shut {#sew-shut}
//!
//! ```work
//! - sew: [front.top, back.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//!   leave: 5 cm
//! - turn: [front, right side out]
//! - close: [front.top, back.top]
//!   by: hand
//! ```
//!
//! Sew along the top edges.
//! ````
//!
//! ## Right
//! ````md
//! ## Sew the pouch shut {#sew-shut}
//!
//! ```work
//! - sew: [front.top, back.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//!   leave: 5 cm
//! - turn: [front, right side out]
//! - close: [front.top, back.top]
//!   by: hand
//! ```
//!
//! Sew along the top edges, but leave {leave} open in the middle.
//! ````
//!
//! ## Limits
//! Looks for the words under `gap` in `templates/vocabulary-en.json`, in any sentence of the step but those of boxes to
//! tick, which look back. An opening
//! `for:` a zip or a slit is told by these.

use super::judge::{Judge, Subject};
use super::passage::{Stands, any_of};
use super::printed_words::each_step;
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("gap-not-told", Group::Words, include_str!("gap_not_told.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every step of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let words = &subject.vocabulary.gap;
    if words.is_empty() {
        return;
    }
    each_step(subject, &mut |edition, step, passages| {
        let told = passages
            .iter()
            .filter(|passage| passage.stands != Stands::Alt && !passage.ticks)
            .any(|passage| any_of(&passage.tokens, words));
        let Some(work) = step
            .works
            .iter()
            .find(|work| work.leave.is_some() && work.leave_for.is_none())
            .filter(|_| !told && !step.body.is_empty())
        else {
            return;
        };
        let span = work.work.leave.as_ref().map_or(work.work.verb_span, |leave| leave.span());
        findings.push(
            CHECK
                .at(span, "this gap is not told in the words of the step")
                .hint("say in the words what stays open, such as “leave {leave} open in the middle”")
                .in_size(edition.size(), ""),
        );
    });
}
