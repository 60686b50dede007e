//! Something is put into another thing, or over it, before both are sewn to tubes.
//!
//! ## Why it matters
//! What is still flat cannot be put into anything. Most often a seam was forgotten, or its step stands too late.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [20 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   sleeve: {outline: {rectangle: [20 cm, 12 cm]}, allowance: seam, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Draw the cuff over the sleeve {#cuff}
//!
//! ```work
//! - cut: [cuff, sleeve]
//! - {sew: [sleeve.left, sleeve.right], allowance: seam, stitch: 2.5 mm}
//! - turn: [sleeve, right side out]
//! - {put: cuff, over: sleeve, with: right sides together}
//! ```
//!
//! Sew the sleeve to a tube, turn it, and put the cuff over it.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [20 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   sleeve: {outline: {rectangle: [20 cm, 12 cm]}, allowance: seam, raw: [top, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Draw the cuff over the sleeve {#cuff}
//!
//! ```work
//! - cut: [cuff, sleeve]
//! - {sew: [cuff.left, cuff.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [sleeve.left, sleeve.right], allowance: seam, stitch: 2.5 mm}
//! - turn: [sleeve, right side out]
//! - {put: cuff, over: sleeve, with: right sides together}
//! ```
//!
//! Sew both to tubes, turn the sleeve, and put the cuff over it.
//! ````
//!
//! ## Limits
//! Looks at `put`. Pieces are a tube or a bag where seams join them round; what hangs together already is left alone.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("no-tube", Group::Work, include_str!("no_tube.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::NoTube { copy, put } = fault else { continue };
        findings.push(
            CHECK
                .at(put.verb, format!("`{copy}` is not sewn to a tube or a bag yet"))
                .hint(
                    "sew it round in an earlier step, such as `- sew: [sleeve.left, sleeve.right]`, or put it in later",
                )
                .in_size(edition.size(), ""),
        );
    }
}
