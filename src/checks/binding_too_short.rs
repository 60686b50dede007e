//! A strip is shorter than the edges that it binds.
//!
//! ## Why it matters
//! The binding ends before the edge does, in the one size that nobody tried.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: [strap_upper, strap_lower]}}
//!   strip: {outline: {rectangle: [20 cm, 3 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, strip]
//! - {sew: [strap_upper.top, strap_lower.top], allowance: seam, stitch: 2.5 mm}
//! - {bind: [strap_upper.top, strap_lower.top, strip], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew and bind the long edge.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: [strap_upper, strap_lower]}}
//!   strip: {outline: {rectangle: [32 cm, 3 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, strip]
//! - {sew: [strap_upper.top, strap_lower.top], allowance: seam, stitch: 2.5 mm}
//! - {bind: [strap_upper.top, strap_lower.top, strip], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew and bind the long edge.
//! ````
//!
//! ## Limits
//! Looks at strips that are named whole beside edges; the longest edge of a strip is its length, and several strips are
//! joined end to end: what the seams between their ends take is off, and so are ends that were folded in. The two edges of
//! one seam count once, and so does what lies on each other: quilted or basted as one, pinned or put together, or named as one.
//! Work on a part of an edge is left alone.

use super::judge::Judge;
use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("binding-too-short", Group::Work, include_str!("binding_too_short.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::StripTooShort { strip, long, needed, laid, bound } = fault else { continue };
        let (long, needed) = (length(edition, *long), length(edition, *needed));
        let hint = match laid {
            true => {
                "where edges lie on each other, name them as one, `bind: [[front.top, lining_front.top], strip]`; else make the strip longer"
            }
            false => "make the strip longer, or name all the strips that are joined to bind it",
        };
        findings.push(
            CHECK
                .at(bound.verb, format!("`{strip}` is shorter than what it binds"))
                .hint(hint)
                .in_size(edition.size(), format!("the strip is {long} long, the edges take {needed}")),
        );
    }
}
