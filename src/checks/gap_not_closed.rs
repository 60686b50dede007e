//! A gap that was left in a seam or a hem is never closed.
//!
//! ## Why it matters
//! What was turned through the gap falls out through it again.
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
//!   leave: 8 cm (3 1/8 in)
//! - turn: [strap, right side out]
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
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at every seam and hem with `leave:` at the end of each size. An opening `for:` a notion is filled by sewing,
//! stitching or attaching that notion; one `for: slit` stays open. `close` counts when it names one of
//! the seam's edges, or a piece that it holds.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("gap-not-closed", Group::Work, include_str!("gap_not_closed.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::GapOpen { edges, sewn, leave, filler } = fault else { continue };
        findings.push(
            CHECK
                .at(*leave, if filler.is_some() { "this opening is never filled" } else { "this gap is never closed" })
                .hint(match (filler, edges.as_slice()) {
                    (Some(notion), _) => {
                        let notion = &edition.draft.facts.notions[*notion].id.text;
                        format!("add a step that sews `{notion}` into it; `close` closes only gaps to turn through")
                    }
                    (None, []) => "add a step that closes it, `- close: …` with `by: hand`".to_owned(),
                    (None, edges) => format!(
                        "add a step that closes it: `- close: [{}]` with `by: hand`",
                        edges.iter().take(3).cloned().collect::<Vec<_>>().join(", ")
                    ),
                })
                .note(sewn.heading, "left in this step")
                .in_size(edition.size(), ""),
        );
    }
}
