//! The same work is done a second time.
//!
//! ## Why it matters
//! A seam that a step repeats was copied and never changed: the seam that was meant is missing, and the maker sews the
//! same line twice.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the long edges together.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap.bottom, tab.bottom], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the long edges together.
//! ````
//!
//! ## Limits
//! Looks at what is done once: seams, hems, bindings, finished edges, darts and pleats, corners, laps, slits,
//! buttonholes and fused layers, when a later fact names all of the same things at the same allowance; and at an end
//! named under `catch:` that a seam holds already; and at a zip of
//! which one end is sewn twice and the other never. A part of an edge (`from`, `to`), a `note:` or words of its own tell a
//! second row from the first, such as one that is sewn for strength.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// What to do about a fact that stands twice.
const AGAIN: &str =
    "take one of the two out, or name what is meant here; where it is done again on purpose, say why in a `note:`";

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("work-twice", Group::Work, include_str!("work_twice.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        if let Fault::EndTwice { twice, never, again } = fault {
            let message = format!("`{twice}` is sewn for the second time here, and `{never}` never");
            let finding = CHECK.at(again.verb, message).hint(format!("name `{never}` where that end is meant"));
            findings.push(finding.in_size(edition.size(), ""));
        }
        let Fault::DoneTwice { caught, first, again } = fault else { continue };
        let (message, hint) = match caught {
            Some(edge) => (
                format!("`{edge}` is caught here, and a seam of step {} holds it already", first.step),
                "take it out of one of the two, or name the end that is meant",
            ),
            None if first.step == again.step => {
                ("this step does this already: the same things, at the same place".to_owned(), AGAIN)
            }
            None => (format!("step {} does this already: the same things, at the same place", first.step), AGAIN),
        };
        let finding = CHECK.at(again.verb, message).hint(hint);
        findings.push(finding.note(first.verb, "the first time").in_size(edition.size(), ""));
    }
}
