//! The grain of a piece that is cut on the fold runs across the fold.
//!
//! ## Why it matters
//! Cloth is folded along its length, so that the fold runs with the grain. Laid on it, the piece is cut across the grain
//! that its arrow asks for.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [8 cm, 6 cm]}, fold: left, grain: horizontal, allowance: seam, raw: all, cut: {outer: 1}}
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
//!   strap: {outline: {rectangle: [8 cm, 6 cm]}, fold: left, grain: vertical, allowance: seam, raw: all, cut: {outer: 1}}
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
//! Looks at pieces with a `fold:` whose grain is `vertical` or `horizontal`. Common practice, no source.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::is_for;
use crate::resolve::{Edition, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("grain-across-fold", Group::Facts, include_str!("grain_across_fold.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every piece of one size that is cut on the fold.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let (Some(fold), Some(grain)) = (&piece.fold, &piece.grain) else { continue };
        if !is_for(piece.sizes.as_ref(), edition.size()) {
            continue;
        }
        let Some(edge) = edition.values.shape(id).and_then(|shape| shape.edge(&fold.text)) else { continue };
        let way = kurbo::Shape::bounding_box(&edge.cut);
        let (across, along) = (way.width() > way.height(), grain.text.as_str());
        let wrong = matches!((along, across), ("horizontal", false) | ("vertical", true));
        if wrong {
            findings.push(
                CHECK
                    .at(grain.span, format!("this grain runs across the fold of `{}`", piece.id.text))
                    .hint("let the grain run along the fold, or cut the piece whole, without `fold:`")
                    .note(fold.span, "the fold")
                    .in_size(edition.size(), ""),
            );
        }
    }
}
