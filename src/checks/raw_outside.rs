//! A seam is sewn with the wrong sides together, and its raw allowances show outside to the end.
//!
//! ## Why it matters
//! Such a seam is the first half of something: it is sewn again from the other side, felled, bound or covered with a
//! strip. Where that is forgotten, the finished thing frays on the outside.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   case: {outline: {rectangle: [12 cm, 10 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: [case_front, case_back]}}
//! ```
//! ````md
//! ## Sew the case {#case}
//!
//! ```work
//! - cut: case
//! - {sew: [case_front.top, case_back.top], allowance: seam, stitch: 2.5 mm, with: wrong sides together}
//! ```
//!
//! Sew the top edges with the wrong sides together.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   case: {outline: {rectangle: [12 cm, 10 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: [case_front, case_back]}}
//!   strip: {outline: {rectangle: [12 cm, 4 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Sew the case {#case}
//!
//! ```work
//! - cut: [case, strip]
//! - {sew: [case_front.top, case_back.top], allowance: seam, stitch: 2.5 mm, with: wrong sides together}
//! - {bind: [case_front.top, case_back.top, strip], stitch: 2.5 mm}
//! ```
//!
//! Sew the top edges with the wrong sides together, and bind them with the strip.
//! ````
//!
//! ## Limits
//! Looks at `sew` with `with: wrong sides together`, or with these words. Allowances are taken in once they are bound,
//! finished, folded, topstitched or sewn again, or the thing is turned. Edges that are declared `raw:` may show.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home, listed};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("raw-outside", Group::Work, include_str!("raw_outside.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::ShowsOutside { edges, sewn } = fault else { continue };
        let names: Vec<String> = edges.iter().map(|edge| format!("`{edge}`")).collect();
        findings.push(
            CHECK
                .at(sewn.verb, format!("the raw allowances of {} show outside", listed(&names)))
                .hint("bind them, sew the seam again from the other side, or fold and topstitch them in a later step")
                .in_size(edition.size(), ""),
        );
    }
}
