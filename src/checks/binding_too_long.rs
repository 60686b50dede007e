//! A strip is much longer than all that it binds.
//!
//! ## Why it matters
//! Cloth is bought and cut for nothing, in a hundred homes.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   mat: {outline: {rectangle: [20 cm, 10 cm]}, grain: vertical, cut: {outer: 1}}
//!   strip: {outline: {rectangle: [100 cm, 4 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the mat {#mat}
//!
//! ```work
//! - cut: [mat, strip]
//! - {bind: [mat.top, mat.right, mat.bottom, mat.left, strip], ends: in, stitch: 2.5 mm}
//! ```
//!
//! Bind the mat all round.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   mat: {outline: {rectangle: [20 cm, 10 cm]}, grain: vertical, cut: {outer: 1}}
//!   strip: {outline: {rectangle: [64 cm, 4 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the mat {#mat}
//!
//! ```work
//! - cut: [mat, strip]
//! - {bind: [mat.top, mat.right, mat.bottom, mat.left, strip], ends: in, stitch: 2.5 mm}
//! ```
//!
//! Bind the mat all round.
//! ````
//!
//! ## Limits
//! More than three twentieths of what is bound and 10 cm beside is much (common practice, no source), once the seams between
//! strips are taken off. Looks at strips that do nothing else: one that goes on as a tie, is stitched by itself or is told of in
//! words is left alone, and so is work on a part of an edge.

use super::judge::Judge;
use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("binding-too-long", Group::Work, include_str!("binding_too_long.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::StripTooLong { strip, long, needed, bound } = fault else { continue };
        let (long, needed) = (length(edition, *long), length(edition, *needed));
        findings.push(
            CHECK
                .at(bound.verb, format!("`{strip}` is much longer than what it binds"))
                .hint("make the strip shorter; one that goes on as a tie is stitched by itself: `edgestitch: [strip.top, strip.bottom]`")
                .in_size(edition.size(), format!("the strip is {long} long, the edges take {needed}")),
        );
    }
}
