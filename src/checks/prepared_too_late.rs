//! Stitches that prepare an edge come after what they prepare it for.
//!
//! ## Why it matters
//! Staystitching keeps a curve from stretching while the piece is handled; ease stitches and gathering threads
//! draw an edge up for its seam. Afterwards they do nothing.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - {staystitch: strap.top, stitch: 2.5 mm}
//! ```
//!
//! Sew and staystitch.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {staystitch: strap.top, stitch: 2.5 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew and staystitch.
//! ````
//!
//! ## Limits
//! `staystitch` comes before anything is sewn, folded or hemmed on its piece; fusing and quilting may come before.
//! `easestitch` and `gather` come before the seam that holds their edge from end to end.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("prepared-too-late", Group::Work, include_str!("prepared_too_late.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::PreparedTooLate { edge, done, earlier } = fault else { continue };
        findings.push(
            CHECK
                .at(done.verb, format!("`{edge}` is prepared after it was worked on"))
                .hint(format!("move this before {}", that_step(earlier, done)))
                .note(earlier.verb, format!("worked on here, in step {}", earlier.step))
                .in_size(edition.size(), ""),
        );
    }
}
