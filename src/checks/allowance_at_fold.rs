//! An allowance is stated for the edge that lies on the fold.
//!
//! ## Why it matters
//! On the fold nothing is cut and nothing sewn: an allowance there makes the piece wider by twice as much.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, fold: left, allowance: {all: seam, left: seam}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Cut the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - press: strap
//! ```
//!
//! Cut the strap on the fold.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, fold: left, allowance: {all: seam}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Cut the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - press: strap
//! ```
//!
//! Cut the strap on the fold.
//! ````
//!
//! ## Limits
//! Looks at the edge named by `fold:` where `allowance:` names it too, with more than nothing; `all` leaves it out by itself.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::to_f64;
use crate::model::is_for;
use crate::resolve::{Edition, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("allowance-at-fold", Group::Facts, include_str!("allowance_at_fold.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every piece of one size that is cut on the fold.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for (_, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let Some(fold) = piece.fold.as_ref().filter(|_| is_for(piece.sizes.as_ref(), edition.size())) else { continue };
        let stated = piece.allowance.iter().filter(|(name, _)| name.text == fold.text);
        for (_, formula) in stated {
            let wide = edition.values.quiet(formula).map_or(0.0, |worked| to_f64(worked.quantity.value));
            if wide > 0.0 {
                findings.push(
                    CHECK
                        .at(formula.span(), format!("`{}` lies on the fold: it has no allowance", fold.text))
                        .hint(format!("write `{}: 0 mm`, or take it out", fold.text))
                        .note(fold.span, "the fold")
                        .in_size(edition.size(), ""),
                );
            }
        }
    }
}
