//! A tight inward curve is sewn and turned, and its allowances are never clipped.
//!
//! ## Why it matters
//! Round a neckline the edge of the allowance is shorter than the seam. It cannot spread when the seam is
//! turned, and the seam pulls and puckers.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   yoke:
//!     outline: {path: [{start: [0 cm, 0 cm]}, {shoulder: [6 cm, 0 cm]},
//!       {neck: {to: [22 cm, 0 cm], arc: 8 cm, turn: left}}, {other: [28 cm, 0 cm]},
//!       {side: [28 cm, 12 cm]}, {base: [0 cm, 12 cm]}, {back: close}]}
//!     allowance: seam
//!     cut: {outer: [body, facing]}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: yoke
//! - finish: [body, facing]
//! - {sew: [body.neck, facing.neck], allowance: seam, stitch: 2.5 mm}
//! - turn: [facing, to the inside]
//! ```
//!
//! Sew the neck and turn the facing.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   yoke:
//!     outline: {path: [{start: [0 cm, 0 cm]}, {shoulder: [6 cm, 0 cm]},
//!       {neck: {to: [22 cm, 0 cm], arc: 8 cm, turn: left}}, {other: [28 cm, 0 cm]},
//!       {side: [28 cm, 12 cm]}, {base: [0 cm, 12 cm]}, {back: close}]}
//!     allowance: seam
//!     cut: {outer: [body, facing]}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: yoke
//! - finish: [body, facing]
//! - {sew: [body.neck, facing.neck], allowance: seam, stitch: 2.5 mm}
//! - clip: [body.neck, facing.neck]
//! - turn: [facing, to the inside]
//! ```
//!
//! Sew the neck, clip it and turn the facing.
//! ````
//!
//! ## Limits
//! Only where it is sure: every edge of the seam curves inwards by an eighth of a circle or more, round a middle that
//! is at most 12 cm away, at an allowance of more than 6.5 mm, and `turn` names a piece that the seam holds. `clip`,
//! `grade`, `trim` and `understitch` count. Outward curves and corners are not looked at.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("curve-not-clipped", Group::Work, include_str!("curve_not_clipped.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::CurveNotClipped { edges, sewn, turned } = fault else { continue };
        let named = edges.join(", ");
        findings.push(
            CHECK
                .at(
                    turned.verb,
                    format!("the seam of `{}` is a tight inward curve, and is turned unclipped", edges.join("` and `")),
                )
                .hint(format!("add before it: `- clip: [{named}]`, or `grade:` it"))
                .note(sewn.verb, format!("sewn here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
