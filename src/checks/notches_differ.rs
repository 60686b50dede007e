//! The notches of two edges that are sewn together do not meet.
//!
//! ## Why it matters
//! Notches are what a maker matches first. When they do not meet, the layers shift, and a curve or
//! a pattern match is lost.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {notches: [top 10 cm], outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {notches: [top 10 cm], outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {notches: [top 10 cm], outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {notches: [top 10 cm from end], outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Two notches meet when they lie within 1.5 mm (common practice, no source: a notch is a snip of 2
//! to 3 mm). One piece is turned over for the seam, so that its edge runs the other way; the same
//! upright edge of two copies of a piece is counted from the top on both. Edges in a row are one length, and a notch of
//! one side may meet a seam of the other. Where a seam states `ease:` or `gather:`, or darts and pleats lie in it, how the
//! longer edge is spread over its notches is the maker's to see: there as many must lie on both sides, and those that lie
//! close together (to 2.5 cm; common practice, no source) in the same order. Silent where one of the sides has no
//! notch, where the lengths differ already, at a part of a seam, and where nothing tells which way an edge lies in its row.

use super::apart::{fine, millimetres};
use super::judge::Judge;
use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Check, Finding, Findings, Group, Home};
use crate::measure::NumberStyle;
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("notches-differ", Group::Work, include_str!("notches_differ.rs")).waivable_in(Home::Facts),
    run,
);

/// The places on both edges in words; finer where rounding makes them alike.
fn listed(edition: &Edition<'_>, places: &(Vec<f64>, Vec<f64>)) -> (String, String) {
    let list = |places: &[f64], word: &dyn Fn(f64) -> String| match places {
        [] => "none".to_owned(),
        places => places.iter().map(|place| word(*place)).collect::<Vec<_>>().join(", "),
    };
    let usual = |place: f64| length(edition, place);
    let (own, others) = (list(&places.0, &usual), list(&places.1, &usual));
    if own != others {
        return (own, others);
    }
    let system = edition.draft.facts.show.first;
    let finer = |place: f64| fine(millimetres(place), system, NumberStyle::Decimal);
    (list(&places.0, &finer), list(&places.1, &finer))
}

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    let mut told: Vec<(crate::source::Span, Finding)> = Vec::new();
    for fault in &history.faults {
        let Fault::NotchesDiffer { edges, notch, places, sewn } = fault else { continue };
        let seam = format!("`{}` meets `{}` in step {}", edges.0, edges.1, sewn.step);
        if let Some((_, finding)) = told.iter_mut().find(|(known, _)| known == notch) {
            finding.notes.push((sewn.verb, seam));
            continue;
        }
        let (own, others) = listed(edition, places);
        let detail = format!("at {own} on `{}`, where `{}` has them at {others}", edges.0, edges.1);
        let finding = CHECK.at( *notch, format!("the notches of `{}` and `{}` do not meet", edges.0, edges.1))
            .hint("place them so that they meet when the pieces lie right sides together: the turned piece runs the other way")
            .note(sewn.verb, seam)
            .in_size(edition.size(), detail);
        told.push((*notch, finding));
    }
    findings.extend(told.into_iter().map(|(_, finding)| finding));
}
