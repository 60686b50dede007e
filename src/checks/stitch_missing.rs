//! A step makes stitches and does not say how long they are.
//!
//! ## Why it matters
//! A stitch that is too long lets the seam gape; one that is too short cuts into the cloth and
//! cannot be unpicked.
//!
//! ## Wrong
//! ````md
//! ## Secure the edge {#edge}
//!
//! ```work
//! - topstitch: front.top
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Right
//! ````md
//! ## Secure the edge {#edge}
//!
//! ```work
//! - topstitch: front.top
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Limits
//! Looks at every verb that lays thread, but for `finish`, whose stitch the machine sets. Silent for
//! `by: hand`, and for `close` when it closes a notion, such as a zip, rather than a
//! seam. Whether the length suits the cloth is yours to judge.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, Work};
use crate::resolve::{Edition, NameKind};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("stitch-missing", Group::Work, include_str!("stitch_missing.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every work fact that the machine stitches.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    for (_, step) in subject.draft.steps() {
        for work in &step.works {
            if stitches(work, subject) && work.stitch.is_none() {
                findings.push(
                    CHECK
                        .at(work.verb_span, format!("this `{}` names no stitch length", work.verb.word()))
                        .hint("add a line below it: `stitch: 2.5 mm`; for hand sewing, `by: hand`")
                        .note(step.span, "in this step"),
                );
            }
        }
    }
}

/// A zip is closed without a stitch.
fn stitches(work: &Work, subject: &Subject<'_>) -> bool {
    let is_notion = |name: &str| {
        let named = |edition: &Edition<'_>| matches!(edition.catalogue.get(name), Some(NameKind::Notion(_)));
        subject.editions.iter().any(named)
    };
    let shuts = work.verb == Verb::Close
        && !work.touches.is_empty()
        && work.touches.iter().all(|touch| is_notion(&touch.name.text));
    work.verb.measures_stitches() && !work.by_hand && !shuts
}
