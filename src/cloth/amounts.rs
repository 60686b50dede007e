//! How much cloth to buy for what is laid.

use crate::measure::{Exact, ratio, to_f64, up_to};

/// The pieces' length (mm) and the spare (mm), grown by what the wash takes (a share of the length, below
/// 1), to the next length that shops cut: 0.1 m, and 1/8 yd (1 yd = 914.4 mm). `None` when it cannot be
/// held.
pub(super) fn to_buy(length: f64, spare: Exact, shrinkage: Exact) -> Option<(Exact, Exact)> {
    let needed = parts_up(length, 10)?.checked_add(parts_up(to_f64(spare), 1000)?)?;
    let needed = needed.checked_div(Exact::ONE.checked_sub(parts_up(to_f64(shrinkage), 1_000_000)?)?)?;
    Some((up_to(needed, Exact::from_integer(100))?, up_to(needed, Exact::of::<9144, 80>())?))
}

/// Up to the next of so many parts of a whole: nothing is lost, and no number grows too long to be
/// reckoned with.
fn parts_up(value: f64, parts: i64) -> Option<Exact> {
    // What a number loses on its way through floating point is no reason for another part.
    let count = (value * parts as f64 - 1e-6).ceil();
    ratio(count as i128, i128::from(parts))
}
