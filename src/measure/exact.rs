//! Checked arithmetic on exact numbers: rounding to a step, roots, and the one edge where an exact
//! number becomes a floating-point one.

use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed, Zero};

/// An exact number: a ratio of two whole numbers in lowest terms.
pub type Exact = Ratio<i128>;

/// Binary places of a root that is not exact: 2^-30 is just under 1e-9.
const ROOT_BITS: u32 = 30;

/// Builds `numer / denom`. `None` when `denom` is 0, or a part has no negative of its own.
pub fn ratio(numer: i128, denom: i128) -> Option<Exact> {
    (denom != 0 && numer != i128::MIN && denom != i128::MIN).then(|| Ratio::new(numer, denom))
}

// The most negative i128 cannot be negated, so a result that holds it counts as an overflow.
fn held(value: Exact) -> Option<Exact> {
    (*value.numer() != i128::MIN).then_some(value)
}

pub(super) fn add(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_add(&right).and_then(held)
}

pub(super) fn sub(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_sub(&right).and_then(held)
}

pub(super) fn mul(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_mul(&right).and_then(held)
}

/// `None` on overflow and on a division by 0.
pub(super) fn div(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_div(&right).and_then(held)
}

/// Which way a number goes when it lies between two steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    /// To the nearer; half-way goes away from 0.
    Nearest,
    /// To the greater.
    Up,
    /// To the lesser.
    Down,
}

/// The multiple of `step` beside `value`. `None` on overflow and when `step` is 0.
pub(super) fn to_step(value: Exact, step: Exact, way: Way) -> Option<Exact> {
    if step.is_zero() {
        return None;
    }
    let step = step.abs();
    let steps = div(value, step)?;
    let (numer, denom) = (*steps.numer(), *steps.denom());
    let floor = numer.div_euclid(denom);
    let over = numer.rem_euclid(denom);
    let whole = match way {
        Way::Down => floor,
        Way::Up => floor + i128::from(over > 0),
        Way::Nearest => {
            let short = denom - over;
            let up = over > short || (over == short && numer > 0);
            floor + i128::from(up)
        }
    };
    mul(Ratio::from_integer(whole), step)
}

/// Rounds to the nearest multiple of `step`, half away from 0. The sign of the step does not
/// matter. The value comes back as it is when the step is 0 or the result cannot be held: an exact
/// figure is never exchanged for a wrong one.
pub fn round_to(value: Exact, step: Exact) -> Exact {
    to_step(value, step, Way::Nearest).unwrap_or(value)
}

/// Rounds to the next multiple of `step` that is not less; otherwise as [`round_to`].
pub fn up_to(value: Exact, step: Exact) -> Exact {
    to_step(value, step, Way::Up).unwrap_or(value)
}

/// Rounds to the next multiple of `step` that is not greater; otherwise as [`round_to`].
pub fn down_to(value: Exact, step: Exact) -> Exact {
    to_step(value, step, Way::Down).unwrap_or(value)
}

/// The square root: exact where it is a ratio of whole numbers; otherwise below the true root by
/// less than one thousand-millionth (1e-9), and the same on every machine. `None` for a number
/// below 0 and on overflow.
pub fn square_root(value: Exact) -> Option<Exact> {
    let numer = u128::try_from(*value.numer()).ok()?;
    let denom = u128::try_from(*value.denom()).ok()?;
    let (top, bottom) = (numer.isqrt(), denom.isqrt());
    if top * top == numer && bottom * bottom == denom {
        return ratio(i128::try_from(top).ok()?, i128::try_from(bottom).ok()?);
    }
    // The whole part of (value x 4^30), by long division in twos so that nothing overflows; its
    // root is 2^30 times the root wanted.
    let (mut scaled, mut rest) = (numer / denom, numer % denom);
    for _ in 0..2 * ROOT_BITS {
        rest *= 2;
        scaled = scaled.checked_mul(2)?.checked_add(u128::from(rest >= denom))?;
        rest %= denom;
    }
    ratio(i128::try_from(scaled.isqrt()).ok()?, 1 << ROOT_BITS)
}

/// The nearest floating-point number or its neighbour, for drawing and for nothing else.
pub fn to_f64(value: Exact) -> f64 {
    *value.numer() as f64 / *value.denom() as f64
}
