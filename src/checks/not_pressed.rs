//! A seam is topstitched without having been pressed.
//!
//! ## Why it matters
//! A seam that is not pressed hides a little tuck, and topstitching fixes it there for good.
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
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - topstitch: strap.top
//!   stitch: 3 mm
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
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - press: [strap, along the seam]
//! - topstitch: strap.top
//!   stitch: 3 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at the last seam of each edge that is topstitched by name. Pressing any piece that the
//! seam holds counts. Hems and folds are not seams. That a seam is pressed first is common
//! practice, no source.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::{Edition, Touched};

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("not-pressed", Group::Work, include_str!("not_pressed.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NotPressed { edge, stitched, sewn } = fault else { continue };
        let work = edition.steps().find(|step| step.number == sewn.step).and_then(|step| step.works.get(sewn.work));
        let zip = work.is_some_and(|work| work.touched().any(|touched| matches!(touched, Touched::ZipEdge(..))));
        let way = if zip { "away from the zip" } else { "along the seam" };
        findings.push(
            CHECK
                .at(stitched.verb, format!("the seam at `{edge}` is topstitched without having been pressed"))
                .hint(format!("press the seam first: `- press: [{}, {way}]`", edge.split('.').next().unwrap_or(edge)))
                .note(sewn.verb, format!("sewn here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
