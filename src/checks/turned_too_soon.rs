//! Allowances are trimmed, clipped or understitched after they were turned in.
//!
//! ## Why it matters
//! They lie between two layers by then: the maker has to turn everything back to reach them.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - turn: [tab, to the inside]
//! - {understitch: tab.top, allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! ```
//!
//! Sew the long edge, turn the tab in, and understitch it.
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
//! - {understitch: tab.top, allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! - turn: [tab, to the inside]
//! ```
//!
//! Sew the long edge, understitch it, and turn the tab in.
//! ````
//!
//! ## Limits
//! Looks at `trim`, `clip`, `grade` and `understitch` on edges whose seam was turned through a gap, or belongs to a facing that was turned.
//! What is turned a second time may be inside out again, and is left alone. That this comes before turning is common practice, no
//! source.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Verb;
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("turned-too-soon", Group::Work, include_str!("turned_too_soon.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::TurnedTooSoon { verb, edge, done, turned } = fault else { continue };
        let word = if *verb == Verb::Understitch { "understitch" } else { "do this" };
        findings.push(
            CHECK
                .at(done.verb, format!("the allowances at `{edge}` are turned in by now"))
                .hint(format!("{word} before {} turns it", that_step(turned, done)))
                .note(turned.verb, "turned here")
                .in_size(edition.size(), ""),
        );
    }
}
