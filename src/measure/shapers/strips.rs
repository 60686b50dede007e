//! Boxed bases, gathers, bindings, linings and zips: sums that are simple and still go wrong.

use super::sums::{above_0, double, half, not_below_0};
use crate::measure::exact::{Exact, up_to};

/// The side of the square to take out of each lower corner, on the stitching lines, so that the
/// base becomes `depth` deep: half of the depth. In mm.
///
/// Source: flattened, the two sides of the cut lie on each other and make a seam of twice the side;
/// common practice, no source. `None` when the depth is not above 0.
pub fn boxed_corner(depth: Exact) -> Option<Exact> {
    half(above_0(depth)?)
}

/// The depth of the base when the corner seam is sewn `up` from the corner, measured along the side
/// seam: twice that. In mm.
///
/// Source: as [`boxed_corner`], of which it is the inverse.
pub fn boxed_depth(up: Exact) -> Option<Exact> {
    double(above_0(up)?)
}

/// The width to cut a panel whose finished front is `width` wide and whose base is `depth` deep,
/// with a seam allowance at both sides: width, depth and two allowances together. In mm.
///
/// Source: half of the depth lies to each side of the front; common practice, no source.
pub fn boxed_side(width: Exact, depth: Exact, allowance: Exact) -> Option<Exact> {
    let finished = above_0(width)?.checked_add(above_0(depth)?)?;
    finished.checked_add(double(not_below_0(allowance)?)?)
}

/// The length of a strip that is gathered to `finished` at a fullness of `fullness` (2 is twice as
/// long), in mm, without allowances at its ends.
///
/// Source: the meaning of fullness; common practice, no source. `None` when the fullness is under 1.
pub fn gathered(finished: Exact, fullness: Exact) -> Option<Exact> {
    if fullness < Exact::ONE {
        return None;
    }
    above_0(finished)?.checked_mul(fullness)
}

/// How many strips of `strip` each make up `length`, when every seam between two of them takes
/// `allowance` from both. A whole number.
///
/// Source: n strips give n times the strip less (n - 1) times two allowances. `None` when two
/// allowances leave nothing of a strip.
pub fn joined_strips(length: Exact, strip: Exact, allowance: Exact) -> Option<Exact> {
    let taken = double(not_below_0(allowance)?)?;
    let each = above_0(above_0(strip)?.checked_sub(taken)?)?;
    let strips = up_to(above_0(length)?.checked_sub(taken)?.checked_div(each)?, Exact::ONE)?;
    Some(strips.max(Exact::ONE))
}

/// The width to cut a single binding (folded in four) that shows `finished` on either side: four
/// times that. In mm.
///
/// Source: two widths show and two are turned under; common practice, no source.
pub fn binding_single(finished: Exact) -> Option<Exact> {
    above_0(finished)?.checked_mul(Exact::from_integer(4))
}

/// The width to cut a double binding (folded in half, sewn through two layers and turned over) that
/// shows `finished` on either side: six times that. In mm.
///
/// Source: each of its two layers is in front, behind and in the seam; common practice, no source.
pub fn binding_double(finished: Exact) -> Option<Exact> {
    above_0(finished)?.checked_mul(Exact::from_integer(6))
}

/// The width of a lining that lies inside `outer` without creasing: `less` narrower. In mm.
///
/// Source: common practice, no source; how much less is the designer's to say. `None` when nothing
/// would be left.
pub fn lining_within(outer: Exact, less: Exact) -> Option<Exact> {
    above_0(above_0(outer)?.checked_sub(not_below_0(less)?)?)
}

/// The length of zip between its two tabs, when zip and tabs together fill `opening` and each tab
/// shows `tab`: the opening less both tabs. In mm.
///
/// Source: the tabs and the zip lie end to end; common practice, no source. `None` when nothing
/// would be left.
pub fn zip_tape(opening: Exact, tab: Exact) -> Option<Exact> {
    above_0(above_0(opening)?.checked_sub(double(not_below_0(tab)?)?)?)
}
