//! An edge is bound before it is sewn into its seam.
//!
//! ## Why it matters
//! A binding closes an edge. The seam then goes through it, or the binding is taken off again.
//!
//! ## Wrong
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
//! - {bind: [strap_upper.top, strap_lower.top, strip], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap_upper.top, strap_lower.top], allowance: seam, stitch: 2.5 mm}
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
//! Looks at edges that are bound from end to end and sewn afterwards. Edges that are kept from fraying before their seam are
//! said with `finish`.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("bound-before-sewn", Group::Work, include_str!("bound_before_sewn.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::BoundTooSoon { edge, bound, sewn } = fault else { continue };
        findings.push(
            CHECK
                .at(bound.verb, format!("`{edge}` is bound before it is sewn"))
                .hint(format!(
                    "move this after {}, or write `finish:` with `by: binding` for an edge alone",
                    that_step(sewn, bound)
                ))
                .note(sewn.verb, format!("sewn only here, in step {}", sewn.step))
                .in_size(edition.size(), ""),
        );
    }
}
