//! What work names that its own size does not have: it could only be passed over, and the step would be done without it.

use super::target::{Meant, Resolver, Target};
use super::without::Without;
use crate::diag::Finding;
use crate::faults::REFERENCE_LEFT_OUT;
use crate::model::{Name, is_for};

/// A piece, a copy, a notion or a fabric of other sizes; what the maker leaves out is no fault.
pub(super) fn absent(target: &Target, resolver: &Resolver<'_>, without: &Without) -> Option<Finding> {
    let facts = &resolver.draft.facts;
    let size = resolver.values.size();
    let of_others = match &target.meant {
        Meant::NoCopies(piece) => !facts.pieces[*piece].cut.is_empty(),
        Meant::Notion(notion) | Meant::ZipEdge(notion, _) | Meant::NoSuchZipEdge(notion, _) => {
            !is_for(facts.notions[*notion].sizes.as_ref(), size)
        }
        Meant::Fabric(fabric) => !is_for(facts.fabrics[*fabric].sizes.as_ref(), size),
        _ => false,
    };
    let owner = target.name.text.split('.').next().unwrap_or("");
    let left = without.leaves(&Name { text: owner.to_owned(), span: target.name.span });
    if !of_others || left {
        return None;
    }
    let finding =
        REFERENCE_LEFT_OUT.at(target.name.span, format!("`{owner}` is left out in a size whose work names it"));
    let hint = "keep the step to the sizes that have it (`for=` behind its heading), hand a shared part what each size has, or put it into all sizes";
    Some(finding.hint(hint).in_size(size, ""))
}
