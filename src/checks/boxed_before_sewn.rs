//! A corner is boxed before the seams beside it are sewn.
//!
//! ## Why it matters
//! A boxed corner is sewn across the ends of two seams. Before those are sewn there is no corner to
//! flatten.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   bag:
//!     outline: {rectangle: [30 cm, 20 cm], corners_out: {bottom: [4 cm, 4 cm]}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: [bag_front, bag_back]}
//! ```
//! ````md
//! ## Box the base {#box}
//!
//! ```work
//! - cut: bag
//! - box: [bag_front.bottom_left_corner, bag_back.bottom_left_corner]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - sew: [bag_front.bottom, bag_back.bottom]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Sew and box the base.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   bag:
//!     outline: {rectangle: [30 cm, 20 cm], corners_out: {bottom: [4 cm, 4 cm]}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: [bag_front, bag_back]}
//! ```
//! ````md
//! ## Box the base {#box}
//!
//! ```work
//! - cut: bag
//! - sew: [bag_front.bottom, bag_back.bottom]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - box: [bag_front.bottom_left_corner, bag_back.bottom_left_corner]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Sew and box the base.
//! ````
//!
//! ## Limits
//! Looks at the edges on both sides of each corner that is boxed, and at seams that come later. An
//! edge beside it that is never sewn is told by `edge-left-raw`.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("boxed-before-sewn", Group::Work, include_str!("boxed_before_sewn.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told = Vec::new();
    for fault in &history.faults {
        let Fault::BoxedTooSoon { corner, edge, boxed, sewn } = fault else { continue };
        if told.contains(&(boxed.step, sewn.step)) {
            continue;
        }
        told.push((boxed.step, sewn.step));
        findings.push(
            CHECK
                .at(boxed.verb, format!("`{corner}` is boxed before `{edge}` is sewn"))
                .hint(format!("sew the seams beside the corner first: move this after {}", that_step(sewn, boxed)))
                .note(sewn.verb, format!("sewn only here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
