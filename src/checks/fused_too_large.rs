//! A layer that is fused on is larger than the piece that it goes onto.
//!
//! ## Why it matters
//! What lies over the edge sticks to the ironing board and to the sole of the iron. Most layers are cut smaller, so that
//! they stay out of the seams.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   stay: {outline: {rectangle: [32 cm, 5 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, stay]
//! - fuse: [strap, stay]
//! - fold: strap
//! ```
//!
//! Fuse the stay to the strap, and fold the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   stay: {outline: {rectangle: [28 cm, 4 cm]}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, stay]
//! - fuse: [strap, stay]
//! - fold: strap
//! ```
//!
//! Fuse the stay to the strap, and fold the strap.
//! ````
//!
//! ## Limits
//! Looks at two pieces that one `fuse` names. Which of them is the layer is told by the other work: it is the one that no
//! step sews; where that is both or neither, nothing is said. It may lie on the other turned by a quarter. A layer that is
//! trimmed later may be larger, and one by less than a millimetre is.

use std::collections::BTreeSet;

use super::judge::Judge;
use super::words::length;
use crate::construct::History;
use crate::diag::{Check, Findings, Group, Home};
use crate::model::Verb;
use crate::resolve::{Edition, EditionWork, PieceId};

/// How much larger a layer may be, in mm: what scissors are out by.
const LARGER: f64 = 1.0;

/// The check.
pub(super) static CHECK: Judge = Judge::construction(
    &Check::warning("fused-too-large", Group::Work, include_str!("fused_too_large.rs")).waivable_in(Home::Words),
    run,
);

/// Looks at every layer that the steps of one size fuse on.
pub(super) fn run(edition: &Edition<'_>, _: &History, findings: &mut Findings) {
    for work in edition.steps().flat_map(|step| &step.works).filter(|work| work.verb == Verb::Fuse) {
        let pieces: BTreeSet<PieceId> = pieces(edition, work).collect();
        let [one, other] = pieces.iter().copied().collect::<Vec<_>>()[..] else { continue };
        let (layer, base) = match (is_sewn(edition, one), is_sewn(edition, other)) {
            (false, true) => (one, other),
            (true, false) => (other, one),
            _ => continue,
        };
        let (Some(own), Some(room)) = (sides(edition, layer), sides(edition, base)) else { continue };
        let within = |own: (f64, f64)| own.0 <= room.0 + LARGER && own.1 <= room.1 + LARGER;
        if within(own) || within((own.1, own.0)) {
            continue;
        }
        let id = |piece: PieceId| &edition.draft.facts.pieces[piece].id;
        let by = |(wide, high): (f64, f64)| format!("{} by {}", length(edition, wide), length(edition, high));
        findings.push(
            CHECK
                .at(
                    work.work.verb_span,
                    format!("`{}` is larger than `{}`, to which it is fused", id(layer).text, id(base).text),
                )
                .hint("cut the layer as large or smaller, by a formula of the piece, or trim it in a later step")
                .note(id(layer).span, "the layer")
                .in_size(edition.size(), format!("it is {}, and the piece {}", by(own), by(room))),
        );
    }
}

fn pieces<'a>(edition: &'a Edition<'_>, work: &'a EditionWork<'_>) -> impl Iterator<Item = PieceId> + 'a {
    work.touched().filter_map(|touched| touched.copy()).map(|copy| edition.cast[copy].piece)
}

/// Whether a step does more with a piece than to lay it on another; what is trimmed is fitted by hand.
fn is_sewn(edition: &Edition<'_>, piece: PieceId) -> bool {
    let passing = [Verb::Cut, Verb::Fuse, Verb::Press, Verb::Mark, Verb::Pin, Verb::Baste, Verb::Quilt];
    let works = edition.steps().flat_map(|step| &step.works).filter(|work| !passing.contains(&work.verb));
    works.flat_map(|work| pieces(edition, work)).any(|own| own == piece)
}

/// The width and the height to which a piece is cut, opened out, in mm; `None` where it is cut larger and trimmed.
fn sides(edition: &Edition<'_>, piece: PieceId) -> Option<(f64, f64)> {
    let trimmed = edition.draft.facts.pieces[piece].cut_larger.is_some();
    edition.values.whole(piece).filter(|_| !trimmed).map(|shape| shape.box_size())
}
