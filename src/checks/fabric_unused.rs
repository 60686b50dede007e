//! A fabric stands on the list of what to buy, and nothing is cut from it.
//!
//! ## Why it matters
//! The maker buys cloth that she does not need, or looks for pieces that were forgotten.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//!   lining: {name: Lining, widths: [140 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [110 cm]}
//! ```
//!
//! ## Limits
//! Looks at every size that needs the fabric: a piece is cut from it there, or work names it.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::model::is_for;
use crate::resolve::{FabricId, Meant};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("fabric-unused", Group::Work, include_str!("fabric_unused.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every fabric of every size, with all that is left to the maker.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    // A piece of a fabric that there is not may be of this one.
    let known = |name: &str| facts.fabrics.iter().any(|fabric| fabric.id.text == name);
    let unknown = facts.pieces.iter().flat_map(|piece| &piece.cut).any(|cut| !known(&cut.fabric.text));
    if !subject.draft.whole || unknown {
        return;
    }
    for edition in subject.editions {
        for (at, fabric) in FabricId::each(&facts.fabrics) {
            let cut = edition.cast.copies().any(|(_, member)| member.fabric == Some(at));
            let mut works = edition.steps().flat_map(|step| &step.works).flat_map(|work| work.named());
            let worked = works.any(|target| matches!(target.meant, Meant::Fabric(fabric) if fabric == at));
            if cut || worked || !is_for(fabric.sizes.as_ref(), edition.size()) {
                continue;
            }
            findings.push(
                CHECK
                    .at(fabric.id.span, format!("nothing is cut from `{}`", fabric.id.text))
                    .hint("name it under `cut:` of the pieces that are of it, say `for:` which sizes need it, or take it out")
                    .in_size(edition.size(), ""),
            );
        }
    }
}
