//! Something is stitched onto a piece whose sides are closed already.
//!
//! ## Why it matters
//! A pocket goes on while its piece lies flat. In a tube the machine does not reach all round it, or stitches the back to the cuff_upper.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [10 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: {cuff_upper: Upper cuff, cuff_under: Under cuff}}}
//!   patch: {outline: {rectangle: [3 cm, 3 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [cuff, patch]
//! - {sew: [cuff_upper.left, cuff_under.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [cuff_upper.right, cuff_under.left], allowance: seam, stitch: 2.5 mm}
//! - press: [cuff_upper, cuff_under]
//! - {topstitch: [patch.left, patch.bottom, patch.right, cuff_upper], allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! ```
//!
//! Sew the sides, and stitch the pocket onto the cuff_upper.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [10 cm, 6 cm]}, allowance: seam, raw: all, cut: {outer: {cuff_upper: Upper cuff, cuff_under: Under cuff}}}
//!   patch: {outline: {rectangle: [3 cm, 3 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [cuff, patch]
//! - {topstitch: [patch.left, patch.bottom, patch.right, cuff_upper], allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! - {sew: [cuff_upper.left, cuff_under.right], allowance: seam, stitch: 2.5 mm}
//! - {sew: [cuff_upper.right, cuff_under.left], allowance: seam, stitch: 2.5 mm}
//! - press: [cuff_upper, cuff_under]
//! ```
//!
//! Stitch the patch onto the cuff, and sew the sides.
//! ````
//!
//! ## Limits
//! Looks at two or more edges of one piece that are stitched onto another as a whole, when two opposite edges of that other are
//! sewn to one piece by then. Common practice, no source.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("stitched-on-tube", Group::Work, include_str!("stitched_on_tube.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::OnTube { name, ground, stitched, sewn } = fault else { continue };
        findings.push(
            CHECK
                .at(stitched.verb, format!("`{name}` is stitched onto `{ground}`, whose sides are closed by now"))
                .hint(format!("move this before {}, while the piece lies flat", that_step(sewn, stitched)))
                .note(sewn.verb, "closed here")
                .in_size(edition.size(), ""),
        );
    }
}
