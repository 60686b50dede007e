//! A finished measurement is as large as a piece is cut: its seam allowances are forgotten.
//!
//! ## Why it matters
//! The maker chooses her size by the finished measurements. If one of them is that of the cut piece, what she sews comes
//! out smaller, by two allowances or more.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: width + 2 * seam
//!   Height: height
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: width
//!   Height: height
//! ```
//!
//! ## Limits
//! Speaks up where the measurement equals the width or the height of a piece as it is cut, in every size, while seams take
//! something from that side and no piece is as large once it is sewn. Rows with `sewn:` are held against the sewing
//! itself.

use super::judge::{Judge, Subject};
use crate::diag::{Check, Findings, Group, Home};
use crate::measure::{Dimension, to_f64};
use crate::model::{Verb, is_for};
use crate::resolve::{Edition, PieceId};

/// The check.
pub(super) static CHECK: Judge = Judge::booklet(
    &Check::warning("finished-as-cut", Group::Facts, include_str!("finished_as_cut.rs")).waivable_in(Home::Facts),
    run,
);

/// Looks at every finished measurement that is a length, over all sizes that have it.
pub(super) fn run(subject: &Subject<'_>, findings: &mut Findings) {
    let facts = &subject.draft.facts;
    let boxes: Vec<Vec<Sides>> = subject.editions.iter().map(sides).collect();
    for (at, row) in facts.finished.iter().enumerate().filter(|(_, row)| row.sewn.is_none()) {
        let mut same: Option<Vec<(PieceId, usize)>> = None;
        let mut sewn_so = false;
        for (edition, sides) in subject.editions.iter().zip(&boxes) {
            let Some(own) = edition.finished.iter().find(|one| one.row == at) else { continue };
            if own.worked.quantity.dimension != Dimension::Length {
                continue;
            }
            let value = to_f64(own.worked.quantity.value);
            let cut = |side: &&Sides| is(side.cut, value) && side.cut - side.sewn > 1.0;
            let here: Vec<_> = sides.iter().filter(cut).map(|side| (side.piece, side.way)).collect();
            sewn_so |= sides.iter().any(|side| is(side.sewn, value));
            same =
                Some(same.map_or(here.clone(), |before| before.into_iter().filter(|one| here.contains(one)).collect()));
        }
        let Some((piece, way)) = same.as_ref().and_then(|same| same.first()).filter(|_| !sewn_so) else { continue };
        let piece = &facts.pieces[*piece];
        let side = ["width", "height"][*way];
        let span = row.value.all().first().map_or(row.name.span, |value| value.span());
        findings.push(
            CHECK
                .at(
                    span,
                    format!(
                        "“{}” is the {side} to which `{}` is cut, with its allowances",
                        row.name.text, piece.id.text
                    ),
                )
                .hint("take off what the seams take, or say what it measures: `{value: …, sewn: front.width}`")
                .note(piece.id.span, "this piece"),
        );
    }
}

/// One side of the box round a piece, in mm.
struct Sides {
    piece: PieceId,
    /// 0 for the width, 1 for the height.
    way: usize,
    cut: f64,
    sewn: f64,
}

/// Both sides of every piece of cloth that a size has.
fn sides(edition: &Edition<'_>) -> Vec<Sides> {
    let mut found = Vec::new();
    for (id, piece) in PieceId::each(&edition.draft.facts.pieces) {
        let Some(shape) = edition.values.shape(id).filter(|_| is_for(piece.sizes.as_ref(), edition.size())) else {
            continue;
        };
        // A bound edge is covered where it was cut, and nothing is taken off it.
        if bound(edition, id) {
            continue;
        }
        let (cutting, stitching) = shape.unfolded();
        let (cut, sewn) = (cutting.box_size(), stitching.box_size());
        found.push(Sides { piece: id, way: 0, cut: cut.0, sewn: sewn.0 });
        found.push(Sides { piece: id, way: 1, cut: cut.1, sewn: sewn.1 });
    }
    found
}

fn bound(edition: &Edition<'_>, piece: PieceId) -> bool {
    let works = edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Bind);
    works.flat_map(|work| &work.targets).any(|target| target.piece(&edition.cast) == Some(piece))
}

/// To the hundredth of a millimetre.
fn is(one: f64, other: f64) -> bool {
    (one - other).abs() < 0.01
}
