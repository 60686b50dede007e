//! What a seam catches is so short that it vanishes in the allowance.
//!
//! ## Why it matters
//! A loop both of whose ends lie in seams loses an allowance at each: of a short one nothing is left to see.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tag: {outline: {rectangle: [2 cm, 3 cm]}, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the loose sides {#loose}
//!
//! ```work
//! - cut: tag
//! - {topstitch: [front, back], stitch: 3 mm, catch: [tag.left, tag.right], allowance: seam}
//! ```
//!
//! Stitch round, and catch the tag.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tag: {outline: {rectangle: [8 cm, 3 cm]}, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the loose sides {#loose}
//!
//! ```work
//! - cut: tag
//! - {topstitch: [front, back], stitch: 3 mm, catch: [tag.left, tag.right], allowance: seam}
//! ```
//!
//! Stitch round, and catch the tag.
//! ````
//!
//! ## Limits
//! Looks at straight edges that a `catch:` names, or that were basted to an edge of the seam, where the allowance of the
//! seam is stated. How far a strap has to reach is not known.

use super::judge::Judge;
use super::words::length;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("caught-too-short", Group::Work, include_str!("caught_too_short.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::CaughtTooShort { edge, long, taken, caught } = fault else { continue };
        findings.push(
            CHECK
                .at(caught.verb, format!("of what `{edge}` belongs to, nothing is left outside the seam"))
                .hint("cut it longer by what the seam takes at each end that it catches")
                .in_size(
                    edition.size(),
                    format!("it is {} long, and {} are caught", length(edition, *long), length(edition, *taken)),
                ),
        );
    }
}
