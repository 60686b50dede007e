//! A binding goes all round, and its ends are neither sewn to each other nor turned in.
//!
//! ## Why it matters
//! Where its two ends meet they fray, and the edge looks out between them.
//!
//! ## Wrong
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
//! - {bind: [mat.top, mat.right, mat.bottom, mat.left, strip], stitch: 2.5 mm}
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
//! Looks at strips that are named whole beside edges which run in a ring: all edges of a piece, or a rim whose sides are sewn.
//! What works on an end of the strip by name, and words of the fact that speak of ends or laps, settle it. That the ends of a
//! binding are joined or turned in is common practice, no source.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("binding-not-closed", Group::Work, include_str!("binding_not_closed.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::StripNotClosed { strip, bound } = fault else { continue };
        findings.push(
            CHECK
                .at(bound.verb, format!("`{strip}` goes all round, and its ends stay open"))
                .hint("sew its ends to each other in a step before, or turn them in: `ends: in`")
                .in_size(edition.size(), ""),
        );
    }
}
