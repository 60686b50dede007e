//! Something is sewn on over an edge that is hemmed or bound later.
//!
//! ## Why it matters
//! The hem then folds over the strap and its stitches, or cannot be folded at all: hem first, and sew the strap on over it.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [10 cm, 6 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//!   strap: {outline: {rectangle: [8 cm, 3 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [cuff, strap]
//! - {attach: [strap, cuff.top], allowance: 5 mm (3/16 in), stitch: 2.5 mm}
//! - {hem: cuff.top, allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the strap on, and hem the edge.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [10 cm, 6 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//!   strap: {outline: {rectangle: [8 cm, 3 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [cuff, strap]
//! - {hem: cuff.top, allowance: seam, stitch: 2.5 mm}
//! - {attach: [strap, cuff.top], allowance: 5 mm (3/16 in), stitch: 2.5 mm}
//! ```
//!
//! Hem the edge, and sew the strap on.
//! ````
//!
//! ## Limits
//! Looks at edges named by `attach` that a later `hem` or `bind` names. What the hem is to catch is basted, or named under `catch:`.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("attached-before-hem", Group::Work, include_str!("attached_before_hem.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::HemmedOver { edge, attached, hemmed } = fault else { continue };
        findings.push(
            CHECK
                .at(attached.verb, format!("`{edge}` is hemmed or bound only after this is sewn onto it"))
                .hint(format!(
                    "move this behind {}; what the hem is to catch is basted before, or named under its `catch:`",
                    that_step(hemmed, attached)
                ))
                .note(hemmed.verb, "hemmed here")
                .in_size(edition.size(), ""),
        );
    }
}
