//! A piece is drawn, and no step cuts it.
//!
//! ## Why it matters
//! The maker reaches the step that sews the piece on, and does not have it. If the cloth is put
//! away by then, or used up, that is a lost evening.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [5 cm, 5 cm]}
//!     raw: all
//!     cut:
//!       outer: 1
//! ```
//! ````md
//! ## Fold the tab {#fold}
//!
//! ```work
//! - fold: tab
//! ```
//!
//! Fold the tab in half.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   tab:
//!     outline: {rectangle: [5 cm, 5 cm]}
//!     raw: all
//!     cut:
//!       outer: 1
//! ```
//! ````md
//! ## Fold the tab {#fold}
//!
//! ```work
//! - cut: tab
//! - fold: tab
//! ```
//!
//! Cut the tab and fold it in half.
//! ````
//!
//! ## Limits
//! `- cut: all` cuts everything. One copy that is cut counts for all copies of a piece. Pieces that
//! are cut from no fabric, and pieces that a size does not have, are passed over.

use super::judge::Judge;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::{Verb, is_for};
use crate::resolve::{Edition, Meant, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::edition(
    &Check::error("piece-not-cut", Group::Work, include_str!("piece_not_cut.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every piece of one size that is cut from a fabric.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    if !edition.draft.whole {
        return;
    }
    let cuts = || edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Cut);
    let named: Vec<&Meant> = cuts().flat_map(|work| &work.targets).map(|target| &target.meant).collect();
    if named.contains(&&Meant::All) {
        return;
    }
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let cut = named.iter().any(|meant| matches!(meant, Meant::Whole(owner) if owner.piece(&edition.cast) == id));
        let wanted = is_for(piece.sizes.as_ref(), edition.size()) && !edition.without.leaves(&piece.id);
        if !cut && piece.cut_in(edition.size()).next().is_some() && wanted {
            findings.push(
                CHECK
                    .at(piece.id.span, format!("no step cuts `{}`", piece.id.text))
                    .hint(format!("add it to the work of the step that cuts: `- cut: [{}]`", piece.id.text))
                    .in_size(edition.size(), ""),
            );
        }
    }
}
