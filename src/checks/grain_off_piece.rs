//! A grain line does not lie wholly on its piece.
//!
//! ## Why it matters
//! The maker lays the piece by its grain line. One that runs over the edge cannot be measured from the
//! selvedge, and on the printed sheet it looks like a mistake.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strip:
//!     outline:
//!       path: [{start: [0 cm, 0 cm]}, {top: [1 cm, 0 cm]}, {right: [15 cm, 14 cm]}, {end: [15 cm, 15 cm]},
//!         {base: [14 cm, 15 cm]}, {left: [0 cm, 1 cm]}, {tip: close}]
//!     grain: vertical
//!     raw: all
//!     cut: {outer: 1}
//! ```
//! ````md
//! ## Cut the strip {#strip}
//!
//! ```work
//! - cut: strip
//! - press: strip
//! ```
//!
//! Cut and press the strip.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strip:
//!     outline:
//!       path: [{start: [0 cm, 0 cm]}, {top: [1 cm, 0 cm]}, {right: [15 cm, 14 cm]}, {end: [15 cm, 15 cm]},
//!         {base: [14 cm, 15 cm]}, {left: [0 cm, 1 cm]}, {tip: close}]
//!     grain: bias
//!     raw: all
//!     cut: {outer: 1}
//! ```
//! ````md
//! ## Cut the strip {#strip}
//!
//! ```work
//! - cut: strip
//! - press: strip
//! ```
//!
//! Cut and press the strip.
//! ````
//!
//! ## Limits
//! Looks at every piece with a `grain:`, in every size, for a line in the way that is stated. A piece
//! that states no grain has no line.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::draw::Plan;
use crate::model::is_for;
use crate::resolve::{Edition, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::warning("grain-off-piece", Group::Print, include_str!("grain_off_piece.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every piece of one size that states its grain.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let Some(grain) = &piece.grain else { continue };
        if !is_for(piece.sizes.as_ref(), edition.size()) {
            continue;
        }
        let Some(plan) = Plan::of(edition, id) else { continue };
        if !plan.grain_lies_on_piece() {
            findings.push(
                CHECK
                    .at(grain.span, format!("no grain line this way lies wholly on `{}`", piece.id.text))
                    .hint("state the grain the other way, or leave it out for a piece that may be cut any way")
                    .in_size(edition.size(), ""),
            );
        }
    }
}
