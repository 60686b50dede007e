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
//! Make the strap, and leave a gap to turn it.
//! ````
//!
//! ## Limits
//! Looks at every seam and hem with `leave:` at the end of each size. An opening `for:` a notion is filled by sewing,
//! stitching or attaching that notion; one `for: slit` stays open. `close` counts when it names one of
//! the seam's edges, or a piece that it holds.

use super::judge::Judge;
use crate::construct::{Fault, History, Moment};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::to_f64;
use crate::model::{Kind, NotionFigure};
use crate::resolve::{Edition, NotionRow};

/// How far a zip's length may lie from that of a gap which is perhaps its own, in mm (common practice, no source).
const AS_LONG: f64 = 15.0;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("gap-not-closed", Group::Work, include_str!("gap_not_closed.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::GapOpen { edges, sewn, leave, filler } = fault else { continue };
        let zip = || zip_as_long(edition, *sewn);
        findings.push(
            CHECK
                .at(*leave, if filler.is_some() { "this opening is never filled" } else { "this gap is never closed" })
                .hint(match (filler, edges.as_slice()) {
                    (Some(notion), _) => {
                        let notion = &edition.draft.facts.notions[*notion].id.text;
                        format!("add a step that sews `{notion}` into it; `close` closes only gaps to turn through")
                    }
                    (None, edges) if let Some(zip) = zip() => {
                        let close = edges.iter().take(3).cloned().collect::<Vec<_>>().join(", ");
                        format!("where `{zip}` is sewn into it, say so: `leave: {{length: …, for: {zip}}}`; else close it: `- close: [{close}]` with `by: hand`")
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

/// The zip that is as long as the gap that a fact leaves.
fn zip_as_long(edition: &Edition<'_>, sewn: Moment) -> Option<String> {
    let work = edition.steps().find(|step| step.number == sewn.step)?.works.get(sewn.work)?;
    let gap = to_f64(work.leave?.quantity.value);
    let fits = |row: &&NotionRow| {
        let length = row.figures.get(&NotionFigure::Length).map(|long| to_f64(long.exact.value));
        let zip = edition.draft.facts.notions[row.notion].kind == Kind::Zip;
        zip && length.is_some_and(|long| (long - gap).abs() <= AS_LONG)
    };
    let row = edition.notions.iter().find(fits)?;
    Some(edition.draft.facts.notions[row.notion].id.text.clone())
}
