//! Something is turned while its zip is shut.
//!
//! ## Why it matters
//! With the zip shut and the seams closed round it, the slider sits inside, out of reach.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   zip: {kind: zip, name: Zip, length: 30 cm}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, zip.tape_a]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - sew: [tab.top, zip.tape_b]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - turn: [strap, right side out]
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! notions:
//!   zip: {kind: zip, name: Zip, length: 30 cm}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - sew: [strap.top, zip.tape_a]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - sew: [tab.top, zip.tape_b]
//!   allowance: seam
//!   stitch: 2.5 mm
//! - open: zip
//! - turn: [strap, right side out]
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Looks at zips whose tapes are sewn to the work that is turned, where one of the layers at the zip is open nowhere
//! else: a skirt is open at its hem, so that its band is turned with the zip shut. A zip is shut until a step opens
//! it. The usual half-way is enough: `open` does not say how far.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("closed-zip-before-turning", Group::Work, include_str!("closed_zip_before_turning.rs"))
        .waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::ZipShut { notion, turned } = fault else { continue };
        let zip = &edition.draft.facts.notions[*notion].id.text;
        findings.push(
            CHECK
                .at(turned.verb, format!("this is turned while `{zip}` is shut"))
                .hint(format!("open it before the last seam closes round it: `- open: {zip}`"))
                .in_size(edition.size(), ""),
        );
    }
}
