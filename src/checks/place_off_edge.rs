//! A place in a work fact lies on no edge.
//!
//! ## Why it matters
//! A seam that begins or ends at a place, and a gap that lies at one, can be found on the cloth only if the place
//! is on the edge.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, to: 35 cm from left}
//! ```
//!
//! Sew the first part of the long edge.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, to: 20 cm from left}
//! ```
//!
//! Sew the first part of the long edge.
//! ````
//!
//! ## Limits
//! A place counts along the edge that the fact names first. It is `start`, `end`, `centre`, `notch 2`, a length or a
//! share, from the start or from an edge that meets it; the name of such an edge alone is the end where it meets it.

use super::apart::millimetres;
use super::judge::Judge;
use crate::construct::{Fault, History, OffEdge};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::{Edition, Worked};

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("place-off-edge", Group::Work, include_str!("place_off_edge.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::PlaceOff { edge, place, why } = fault else { continue };
        let (message, hint) = match why {
            OffEdge::TooFar(length) => {
                let worked = Worked { quantity: millimetres(*length), stated: None };
                let length = edition.figures(&worked).first.to_string().replace('\u{a0}', " ");
                (format!("this place is not on `{edge}`, which is {length} long"), "count less far".to_owned())
            }
            OffEdge::NotBeside(known) => (
                format!("`{edge}` meets no edge of that name"),
                format!(
                    "places are counted along the edge named first: count from an edge at its end ({}), from `start` or `end`, or name another edge first",
                    known.join(", ")
                ),
            ),
            OffEdge::NoNotch(0) => (format!("`{edge}` has no notch"), "give the piece one under `notches:`".to_owned()),
            OffEdge::NoNotch(1) => (format!("`{edge}` has one notch only"), "write `notch`".to_owned()),
            OffEdge::NoNotch(count) => {
                (format!("`{edge}` has no such notch"), format!("its notches are numbered from 1 to {count}"))
            }
            OffEdge::MarkElsewhere => (
                format!("this mark does not lie at `{edge}`"),
                "name a mark that lies on the stitching line of an edge in the seam, or count along the edge: `6 cm from left`"
                    .to_owned(),
            ),
            OffEdge::Follows => continue,
        };
        findings.push(CHECK.at(*place, message).hint(hint).in_size(edition.size(), ""));
    }
}
