//! A mark is made after something was stitched to it.
//!
//! ## Why it matters
//! By then the thing lies where the maker guessed.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [10 cm, 6 cm]}, allowance: seam, raw: all, marks: {place: {outline: patch, at: [2 cm, 1 cm]}}, cut: {outer: 1}}
//!   patch: {outline: {rectangle: [3 cm, 3 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [cuff, patch]
//! - {topstitch: [patch.left, patch.bottom, patch.right, cuff.place], allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! - mark: cuff.place
//! ```
//!
//! Stitch the patch on, and mark its place.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   cuff: {outline: {rectangle: [10 cm, 6 cm]}, allowance: seam, raw: all, marks: {place: {outline: patch, at: [2 cm, 1 cm]}}, cut: {outer: 1}}
//!   patch: {outline: {rectangle: [3 cm, 3 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [cuff, patch]
//! - mark: cuff.place
//! - {topstitch: [patch.left, patch.bottom, patch.right, cuff.place], allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! ```
//!
//! Mark the place, and stitch the patch on.
//! ````
//!
//! ## Limits
//! Looks at marks that the work names both under `mark` and where something is stitched or attached. One that was marked before
//! is marked anew.

use super::judge::Judge;
use super::words::that_step;
use crate::construct::{Fault, History};
use crate::diag::{Check, Findings, Group, Home};
use crate::resolve::Edition;
/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::error("marked-too-late", Group::Work, include_str!("marked_too_late.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at the play of one size.
pub(super) fn run(edition: &Edition<'_>, history: &History, findings: &mut Findings) {
    for fault in &history.faults {
        let Fault::MarkedTooLate { name, marked, used } = fault else { continue };
        findings.push(
            CHECK
                .at(marked.verb, format!("`{name}` is marked after it was needed"))
                .hint(format!("mark first: move this before {}", that_step(used, marked)))
                .note(used.verb, "needed here")
                .in_size(edition.size(), ""),
        );
    }
}
