//! Darts, pleats, facings, buttonholes and elastic: the sums that recur in garments.

use super::sums::{above_0, double, half, not_below_0, pi};
use crate::measure::exact::{Exact, square_root};

/// The width of each of `darts` darts that together take `wide` in to `narrow`: their difference divided
/// by the number. In mm.
///
/// Source: each dart takes its width out of the edge; common practice, no source. `None` when nothing is to
/// be taken in, or when there is no dart.
pub fn dart_width(wide: Exact, narrow: Exact, darts: Exact) -> Option<Exact> {
    let taken = above_0(wide.checked_sub(above_0(narrow)?)?)?;
    taken.checked_div(above_0(darts)?)
}

/// The length of a leg of a dart that is `width` wide at the edge and `length` long down its middle: the
/// root of the squares of the length and of half the width. In mm, exact or too small by under a
/// thousand-millionth of a millimetre.
///
/// Source: the theorem of Pythagoras; that both legs are as long is common practice, no source.
pub fn dart_leg(width: Exact, length: Exact) -> Option<Exact> {
    let (across, down) = (half(above_0(width)?)?, above_0(length)?);
    square_root(across.checked_mul(across)?.checked_add(down.checked_mul(down)?)?)
}

/// The length of an edge before it is laid in `pleats` pleats of this depth each: every pleat takes twice
/// its depth. In mm.
///
/// Source: a pleat lies in three layers, of which one was there before; common practice, no source.
pub fn pleated(finished: Exact, pleats: Exact, depth: Exact) -> Option<Exact> {
    let taken = double(above_0(depth)?)?.checked_mul(above_0(pleats)?)?;
    above_0(finished)?.checked_add(taken)
}

/// The depth of each of `pleats` pleats that take an edge in to `finished`. In mm.
///
/// Source: as [`pleated`], of which it is the inverse. `None` when nothing is to be taken in.
pub fn pleat_depth(length: Exact, finished: Exact, pleats: Exact) -> Option<Exact> {
    let taken = above_0(length.checked_sub(above_0(finished)?)?)?;
    half(taken.checked_div(above_0(pleats)?)?)
}

/// The length of an arc of a circle of this radius that turns through `turn` degrees. In mm.
///
/// Source: an arc is as great a share of the length round its circle as its turn is of 360 degrees
/// (elementary geometry).
pub fn arc_length(radius: Exact, turn: Exact) -> Option<Exact> {
    above_0(radius)?.checked_mul(radians(above_0(turn)?)?)
}

/// The length of the outer edge of a facing that is `width` wide all along, when its neckline or armhole
/// turns through `turn` degrees, 360 for a whole round. In mm.
///
/// Source: a line at a constant distance outside a curve is longer by the distance times the turn in
/// radians (the theorem of Steiner on parallel curves); its use for facings is common practice, no source.
pub fn facing_edge(neckline: Exact, width: Exact, turn: Exact) -> Option<Exact> {
    let longer = above_0(width)?.checked_mul(radians(not_below_0(turn)?)?)?;
    above_0(neckline)?.checked_add(longer)
}

/// The length of bias strip to bind a round edge: cut shorter than the edge by a share, so that it lies
/// flat, with an allowance at both ends. In mm.
///
/// Source: common practice, no source; how much shorter is the designer's to say. `None` when the share is
/// below 0 or nothing would be left.
pub fn bias_round(edge: Exact, shorter: Exact, allowance: Exact) -> Option<Exact> {
    shortened(edge, shorter)?.checked_add(double(not_below_0(allowance)?)?)
}

/// The length of elastic for a measure of the body: shorter by a share, with what its ends lie over each
/// other. In mm.
///
/// Source: common practice, no source; how much shorter depends on the elastic and is the designer's to say.
pub fn elastic_length(body: Exact, shorter: Exact, overlap: Exact) -> Option<Exact> {
    shortened(body, shorter)?.checked_add(not_below_0(overlap)?)
}

/// How much deeper to cut an edge that becomes a casing: the width of the elastic, what it needs to slip
/// through, and what is turned under. In mm.
///
/// Source: common practice, no source.
pub fn casing_depth(elastic: Exact, spare: Exact, turned: Exact) -> Option<Exact> {
    above_0(elastic)?.checked_add(not_below_0(spare)?)?.checked_add(not_below_0(turned)?)
}

/// The length of a buttonhole: the width and the thickness of its button together. In mm.
///
/// Source: common practice, no source.
pub fn buttonhole_length(width: Exact, thickness: Exact) -> Option<Exact> {
    above_0(width)?.checked_add(not_below_0(thickness)?)
}

/// How far apart buttons lie, from middle to middle, when the first and the last lie at the ends of
/// `length`. In mm.
///
/// Source: counting: one gap fewer than buttons. `None` when there are fewer than two.
pub fn button_gap(length: Exact, buttons: Exact) -> Option<Exact> {
    above_0(length)?.checked_div(above_0(buttons.checked_sub(Exact::ONE)?)?)
}

/// Degrees as the length of an arc of radius 1.
fn radians(turn: Exact) -> Option<Exact> {
    turn.checked_mul(pi())?.checked_div(Exact::from_integer(180))
}

/// A length less a share of it; `None` when the share is below 0, or the whole or more.
fn shortened(length: Exact, share: Exact) -> Option<Exact> {
    above_0(length)?.checked_mul(above_0(Exact::ONE.checked_sub(not_below_0(share)?)?)?)
}
