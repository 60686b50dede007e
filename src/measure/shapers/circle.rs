//! Skirts and collars cut as a ring or as a part of one.

use super::sums::{above_0, double, pi};
use crate::measure::exact::Exact;

/// The radius of the waistline of a skirt that is `part` of a whole circle (1, 1/2, 3/4): the waist
/// divided by twice pi and by the part. In mm.
///
/// Source: the length round a circle (elementary geometry); that the waistline is an arc of this
/// length is common practice, no source. `None` when the waist or the part is not above 0.
pub fn circle_radius(waist: Exact, part: Exact) -> Option<Exact> {
    let round = double(pi())?.checked_mul(above_0(part)?)?;
    above_0(waist)?.checked_div(round)
}

/// The length of the hem of such a skirt, `length` below its waistline, in mm.
///
/// Source: as [`circle_radius`].
pub fn circle_hem(waist: Exact, part: Exact, length: Exact) -> Option<Exact> {
    let radius = circle_radius(waist, part)?.checked_add(above_0(length)?)?;
    double(pi())?.checked_mul(part)?.checked_mul(radius)
}
