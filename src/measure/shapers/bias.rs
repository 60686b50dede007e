//! Bias strips: what a square of cloth gives, and what square a length needs.

use super::sums::above_0;
use crate::measure::exact::{Exact, square_root, up_to};

/// The length of a strip of width `width` cut from one square of side `side` on the bias in one
/// go: the area of the square divided by the width of the strip. In mm.
///
/// Source: the strip has the area of the square; that the seams of the square are left out of it is
/// common practice, no source. `None` when a figure is not above 0 or the strip is wider than the
/// square.
pub fn bias_length(side: Exact, width: Exact) -> Option<Exact> {
    let (side, width) = (above_0(side)?, above_0(width)?);
    if width > side {
        return None;
    }
    side.checked_mul(side)?.checked_div(width)
}

/// The side of the square that gives `length` of strip of width `width`, in mm: the root of their
/// product, exact or too small by under a thousand-millionth of a millimetre.
///
/// Source: as [`bias_length`].
pub fn bias_square(length: Exact, width: Exact) -> Option<Exact> {
    square_root(above_0(length)?.checked_mul(above_0(width)?)?)
}

/// How many seams join the strips when `length` is pieced from strips of `longest` each: one fewer
/// than the strips.
///
/// Source: counting; each strip is taken to give its whole length. `None` when a figure is not above
/// 0.
pub fn bias_joins(length: Exact, longest: Exact) -> Option<Exact> {
    let strips = above_0(length)?.checked_div(above_0(longest)?)?;
    up_to(strips, Exact::ONE)?.checked_sub(Exact::ONE)
}
