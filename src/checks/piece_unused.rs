//! A piece is cut, and nothing is done with it.

use crate::diag::{Finding, Findings};
use crate::model::{Piece, Verb, is_for};
use crate::resolve::Edition;

/// Looks at every piece of one size.
pub(super) fn run(edition: &Edition<'_>, findings: &mut Findings) {
    for piece in &edition.draft.facts.pieces {
        let names = names_of(piece);
        let used = edition
            .steps()
            .flat_map(|step| &step.works)
            .filter(|work| work.verb != Verb::Cut)
            .flat_map(|work| &work.touches)
            .any(|name| names.contains(&name.text.split('.').next().unwrap_or("")));
        if !used && is_for(piece.sizes.as_ref(), edition.size()) {
            findings.push(
                Finding::warning("piece-unused", piece.id.span, format!("no step does anything with `{}`", piece.id.text))
                    .hint("name it in the work of the step that uses it, or take the piece out")
                    .in_size(edition.size(), ""),
            );
        }
    }
}

/// A piece's own name and those of its copies.
pub(super) fn names_of(piece: &Piece) -> Vec<&str> {
    std::iter::once(&piece.id).chain(piece.copies()).map(|name| name.text.as_str()).collect()
}
