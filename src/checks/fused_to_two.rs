//! One layer is fused to two things.
//!
//! ## Why it matters
//! Glue lies on one side of a layer, and one piece of it holds to one piece of cloth: the layer that was meant here lies unused, and the maker
//! cuts another one.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//!   layer: {name: Interfacing, widths: [90 cm], grain: no}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   stiff: {outline: {rectangle: [28 cm, 3 cm]}, cut: {layer: {stiff_strap: Strap interfacing, stiff_tab: Tab interfacing}}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab, stiff]
//! - fuse: [strap, stiff_strap]
//! - fuse: [tab, stiff_strap]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Fuse the interfacing to both pieces, and sew them together.
//! ````
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//!   layer: {name: Interfacing, widths: [90 cm], grain: no}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   stiff: {outline: {rectangle: [28 cm, 3 cm]}, cut: {layer: {stiff_strap: Strap interfacing, stiff_tab: Tab interfacing}}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab, stiff]
//! - fuse: [strap, stiff_strap]
//! - fuse: [tab, stiff_tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Fuse the interfacing to both pieces, and sew them together.
//! ````
//!
//! ## Limits
//! Looks at layers of a fabric of which no piece is sewn by itself, and at what they are fused to, where that is of another
//! fabric. Two layers on one piece are well.

use super::judge::Judge;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("fused-to-two", Group::Work, include_str!("fused_to_two.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::FusedToTwo { layer, to: (one, two), first, again } = fault else { continue };
        findings.push(
            CHECK
                .at(again.verb, format!("`{layer}` is fused to `{two}` here, and to `{one}` before"))
                .hint(format!("name the layer that is meant for `{two}`, or cut one more"))
                .note(first.verb, "the first time")
                .in_size(edition.size(), ""),
        );
    }
}
