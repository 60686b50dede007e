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
//! with a `grain:` keeps its way on the cloth. Where the cloth is folded for another piece, what goes on
//! it opened out is laid there. Silent for a fabric with no `widths:`.

use super::apart::Told;
use super::judge::Judge;
use super::judge::Subject;
use crate::cloth::Layers;
use crate::diag::{Check, Findings, Group, Home};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::error("piece-too-wide", Group::Print, include_str!("piece_too_wide.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at the cloth of every size.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let with = subject.cloth_with.iter().map(|with| with.iter().flat_map(|(_, laid)| laid));
    for ((edition, laid), with) in subject.editions.iter().zip(subject.cloth).zip(with) {
        for fault in laid.iter().chain(with).filter_map(|one| one.as_ref().err()) {
            let fabric = &facts.fabrics[fault.bolt.fabric];
            let span = fabric.widths.get(fault.bolt.width_at).map_or(fabric.id.span, |width| width.span());
            for wide in &fault.pieces {
                let piece = &facts.pieces[wide.piece].id;
                let (between, room) = match wide.layers {
                    Layers::One => ("between the selvedges", fault.bolt.flat_room()),
                    Layers::Both | Layers::Fold => ("between the fold and the selvedges", fault.bolt.folded_room()),
                };
                let told = Told::lengths(edition, wide.needed, room);
                let only =
                    if told.apart.is_empty() { String::new() } else { format!(", where there are {}", told.other) };
                findings.push(
                    CHECK
                        .at(span, format!("`{}` does not fit on this width of `{}`", piece.text, fabric.id.text))
                        .hint("take the width out, or cut the piece in two; a piece with no `grain:` may be turned")
                        .note(piece.span, "the piece")
                        .in_size(edition.size(), format!("it needs {} {between}{only}", told.one)),
                );
            }
        }
    }
}
