//! A piece is wider than the cloth that it is cut from.

use super::Subject;
use super::words::length;
use crate::diag::{Finding, Findings};

/// Looks at the cloth of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    for (edition, laid) in subject.editions.iter().zip(subject.cloth) {
        for fault in laid.iter().filter_map(|one| one.as_ref().err()) {
            let fabric = &facts.fabrics[fault.bolt.fabric];
            let span = fabric.widths.get(fault.bolt.width_at).map_or(fabric.id.span, |width| width.span());
            for (piece, needed) in &fault.pieces {
                let piece = &facts.pieces[*piece].id;
                findings.push(
                    Finding::error("piece-too-wide", span, format!("`{}` does not fit on this width of `{}`", piece.text, fabric.id.text))
                        .hint("take the width out, or cut the piece in two; a piece with no `grain:` may be turned")
                        .note(piece.span, "the piece")
                        .in_size(edition.size(), format!("it needs {} between the selvedges", length(edition, *needed))),
                );
            }
        }
    }
}
