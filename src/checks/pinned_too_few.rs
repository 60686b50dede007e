//! A piece is sewn along with others that were pinned, and was not pinned itself.
//!
//! ## Why it matters
//! A layer that nobody laid down is missing from the seam, or slips while it is sewn.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   flap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab, flap]
//! - pin: [strap, tab]
//! - {sew: [strap, tab, flap, round all four sides], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Pin the layers, and sew them all round.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   flap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab, flap]
//! - pin: [strap, tab, flap]
//! - {sew: [strap, tab, flap, round all four sides], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Pin the layers, and sew them all round.
//! ````
//!
//! ## Limits
//! Looks at whole pieces that are pinned and then sewn as whole pieces. What is held to one of them before, by basting, fusing or a
//! seam, needs no pins.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("pinned-too-few", Group::Work, include_str!("pinned_too_few.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NotPinned { names, pinned, sewn } = fault else { continue };
        let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
        let verb = if names.len() > 1 { "are" } else { "is" };
        let names = names.join(" and ");
        findings.push(
            CHECK
                .at(pinned.verb, format!("{names} {verb} sewn along with these, and not pinned"))
                .hint(format!("name {names} here too, or baste it to one of the others before"))
                .note(sewn.verb, "sewn here")
                .in_size(edition.size(), ""),
        );
    }
}
