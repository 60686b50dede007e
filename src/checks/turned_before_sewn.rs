//! Something is turned right side out before anything of it is sewn.
//!
//! ## Why it matters
//! Flat pieces have no inside. The steps stand in the wrong order, most often because two parts of the booklet were exchanged.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - turn: [strap, right side out]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Turn the strap out, and sew it.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - turn: [strap, right side out]
//! ```
//!
//! Sew the strap, and turn it out.
//! ````
//!
//! ## Limits
//! Looks at `turn` with the words `right side out`, of a piece that no seam holds yet and that a later one does.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("turned-before-sewn", Group::Work, include_str!("turned_before_sewn.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::TurnedUnsewn { name, turned, sewn } = fault else { continue };
        findings.push(
            CHECK
                .at(turned.verb, format!("nothing of `{name}` is sewn yet"))
                .hint(format!("move this behind {}", that_step(sewn, turned)))
                .note(sewn.verb, "sewn here")
                .in_size(edition.size(), ""),
        );
    }
}
