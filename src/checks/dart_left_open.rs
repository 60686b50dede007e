//! A dart, a pleat or a tuck is open when its edge is sewn, or is never sewn.
//!
//! ## Why it matters
//! The edge is then too long for the one that it is sewn to, and once the seam is sewn the dart can no longer be sewn
//! through to the edge.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     darts: {shaping: {edge: top, at: centre, width: 2 cm, length: 8 cm}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [28 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {dart: strap.shaping, stitch: 2.5 mm}
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     darts: {shaping: {edge: top, at: centre, width: 2 cm, length: 8 cm}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [28 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {dart: strap.shaping, stitch: 2.5 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at `sew`, `bind`, `hem` and `box`; stitching that only holds an edge, such as `baste`, may come before. Each
//! dart is told once, at the first seam that finds it open. A piece that is cut and never sewn is left alone.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
use crate::source::Span;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("dart-left-open", Group::Work, include_str!("dart_left_open.rs")).waivable_in(Home::Anywhere),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told: Vec<(Span, Option<usize>)> = Vec::new();
    for fault in &history.faults {
        let Fault::LeftOpen { sort, name, place, edge, joined, like } = fault else { continue };
        // Copies of one piece that are sewn in one step are one fault.
        let which = (*place, joined.map(|joined| joined.step));
        // Where its like of the other piece is made, it was forgotten.
        let at = like.map_or(*place, |like| like.verb);
        if told.contains(&which) {
            continue;
        }
        told.push(which);
        let finding = match (joined, edge) {
            (Some(joined), Some(edge)) => CHECK
                .at(at, format!("the {sort} `{name}` is still open when `{edge}` is sewn"))
                .hint(format!("write `{sort}: {name}` in a step before that seam"))
                .note(joined.verb, format!("sewn here, in step {}", joined.step)),
            _ => CHECK
                .at(at, format!("the {sort} `{name}` is never sewn"))
                .hint(format!("write `{sort}: {name}` in the step that makes it, or take the {sort} out of the piece")),
        };
        let finding = match like {
            Some(_) => finding.note(*place, "described here; its like is made in the step above"),
            None => finding,
        };
        findings.push(finding.in_size(edition.size(), ""));
    }
}
