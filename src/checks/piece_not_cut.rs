//! A piece is drawn, and no step cuts it.

use super::piece_unused::names_of;
use crate::diag::{Finding, Findings};
use crate::model::{Verb, is_for};
use crate::resolve::Edition;

/// Looks at every piece of one size that is cut from a fabric.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    let cuts = || edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Cut);
    let everything = cuts().any(|work| work.touches.iter().any(|name| name.text == "all"));
    if everything {
        return;
    }
    for piece in &edition.draft.facts.pieces {
        let names = names_of(piece);
        let cut = cuts().flat_map(|work| &work.touches).any(|name| names.contains(&name.text.as_str()));
        if !cut && !piece.cut.is_empty() && is_for(piece.sizes.as_ref(), edition.size()) {
            findings.push(
                Finding::error("piece-not-cut", piece.id.span, format!("no step cuts `{}`", piece.id.text))
                    .hint(format!("add it to the work of the step that cuts: `- cut: [{}]`", piece.id.text))
                    .in_size(edition.size(), ""),
            );
        }
    }
}
