//! A piece is wider than the cloth that it is cut from.
//!
//! ## Why it matters
//! The maker buys the width that the booklet names, and finds at the cutting table that the piece
//! does not go on. It shows in the largest size first.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [20 cm, 110 cm]}
//! ```
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton, widths: [30 cm, 110 cm]}
//! ```
//!
//! ## Limits
//! Every width of the fabric is tried in every size, less the selvedges that `sheets:` states. A piece
//! with a `grain:` keeps its way on the cloth. Silent for a fabric with no `widths:`.

use super::Subject;
use super::judge::Judge;
use super::words::length;
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("piece-too-wide", Group::Print, include_str!("piece_too_wide.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at the cloth of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    for (edition, laid) in subject.editions.iter().zip(subject.cloth) {
        for fault in laid.iter().filter_map(|one| one.as_ref().err()) {
            let fabric = &facts.fabrics[fault.bolt.fabric];
            let room = if fault.bolt.folded { "between the fold and the selvedge" } else { "between the selvedges" };
            let span = fabric.widths.get(fault.bolt.width_at).map_or(fabric.id.span, |width| width.span());
            for (piece, needed) in &fault.pieces {
                let piece = &facts.pieces[*piece].id;
                findings.push(
                    CHECK
                        .at(span, format!("`{}` does not fit on this width of `{}`", piece.text, fabric.id.text))
                        .hint("take the width out, or cut the piece in two; a piece with no `grain:` may be turned")
                        .note(piece.span, "the piece")
                        .in_size(edition.size(), format!("it needs {} {room}", length(edition, *needed))),
                );
            }
        }
    }
}
