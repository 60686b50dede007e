//! Exact numbers and their checked arithmetic: rounding to a step, roots, and the one edge where an
//! exact number becomes a floating-point one.

use std::ops::Neg;

use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed, Zero};

/// An exact number: a ratio of two whole numbers in lowest terms. Neither part is the one number
/// that has no negative of its own, so a sign can always be turned.
///
/// There is no `+ - * /` for it, only sums that say when their result cannot be held:
///
/// ```compile_fail
/// let one = notchbook::measure::Exact::from_integer(1);
/// let two = one + one;
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Exact(Ratio<i128>);

/// Binary places of a root that is not exact: 2^-30 is just under 1e-9.
const ROOT_BITS: u32 = 30;

/// Builds `numer / denom`. `None` when `denom` is 0, or a part has no negative of its own.
pub fn ratio(numer: i128, denom: i128) -> Option<Exact> {
    (denom != 0 && numer != i128::MIN && denom != i128::MIN).then(|| Exact(Ratio::new(numer, denom)))
}

impl Exact {
    /// Nothing.
    pub const ZERO: Exact = Exact::from_integer(0);

    /// One.
    pub const ONE: Exact = Exact::from_integer(1);

    /// A whole number.
    pub const fn from_integer(whole: i64) -> Exact {
        Exact(Ratio::new_raw(whole as i128, 1))
    }

    /// A fraction that stands in the program, in lowest terms: `Exact::of::<127, 5>()`. A
    /// denominator that is not above 0 does not compile.
    pub const fn of<const NUMER: i64, const DENOM: i64>() -> Exact {
        const { assert!(DENOM > 0, "the denominator is above 0") };
        let (mut rest, mut common) = (NUMER.unsigned_abs(), DENOM.unsigned_abs());
        while rest > 0 {
            (rest, common) = (common % rest, rest);
        }
        let common = common as i128;
        Exact(Ratio::new_raw(NUMER as i128 / common, DENOM as i128 / common))
    }

    // The most negative i128 cannot be negated, so a result that holds it counts as an overflow.
    fn held(value: Option<Ratio<i128>>) -> Option<Exact> {
        value.filter(|value| *value.numer() != i128::MIN).map(Exact)
    }

    /// The whole number above the bar; below 0 when the number is.
    pub fn numer(self) -> i128 {
        *self.0.numer()
    }

    /// The whole number below the bar, above 0.
    pub fn denom(self) -> i128 {
        *self.0.denom()
    }

    /// The sum. `None` on overflow.
    pub fn checked_add(self, other: Exact) -> Option<Exact> {
        Exact::held(self.0.checked_add(&other.0))
    }

    /// The difference. `None` on overflow.
    pub fn checked_sub(self, other: Exact) -> Option<Exact> {
        Exact::held(self.0.checked_sub(&other.0))
    }

    /// The product. `None` on overflow.
    pub fn checked_mul(self, other: Exact) -> Option<Exact> {
        Exact::held(self.0.checked_mul(&other.0))
    }

    /// The quotient. `None` on overflow and on a division by 0.
    pub fn checked_div(self, other: Exact) -> Option<Exact> {
        Exact::held(self.0.checked_div(&other.0))
    }

    /// How far two numbers lie apart, 0 or more. `None` on overflow.
    pub fn distance(self, other: Exact) -> Option<Exact> {
        self.checked_sub(other).map(Exact::abs)
    }

    /// The number without its minus sign.
    pub fn abs(self) -> Exact {
        Exact(self.0.abs())
    }

    /// Whether it is 0.
    pub fn is_zero(self) -> bool {
        self.0.is_zero()
    }

    /// Whether it is above 0.
    pub fn is_positive(self) -> bool {
        self.numer() > 0
    }

    /// Whether it is below 0.
    pub fn is_negative(self) -> bool {
        self.numer() < 0
    }

    /// Whether it is a whole number.
    pub fn is_integer(self) -> bool {
        self.denom() == 1
    }
}

/// The one sign that stands: turning it cannot overflow.
impl Neg for Exact {
    type Output = Exact;

    fn neg(self) -> Exact {
        Exact(-self.0)
    }
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

/// The multiple of `step` beside `value`; the sign of the step does not matter. `None` on overflow
/// and when `step` is 0.
pub(super) fn to_step(value: Exact, step: Exact, way: Way) -> Option<Exact> {
    let step = step.abs();
    let steps = value.checked_div(step)?;
    let (numer, denom) = (steps.numer(), steps.denom());
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
    ratio(whole, 1)?.checked_mul(step)
}

/// Rounds to the nearest multiple of `step`, half away from 0. `None` when the step is 0 or the
/// result cannot be held.
pub fn round_to(value: Exact, step: Exact) -> Option<Exact> {
    to_step(value, step, Way::Nearest)
}

/// Rounds to the next multiple of `step` that is not less; otherwise as [`round_to`].
pub fn up_to(value: Exact, step: Exact) -> Option<Exact> {
    to_step(value, step, Way::Up)
}

/// Rounds to the next multiple of `step` that is not greater; otherwise as [`round_to`].
pub fn down_to(value: Exact, step: Exact) -> Option<Exact> {
    to_step(value, step, Way::Down)
}

/// The square root: exact where it is a ratio of whole numbers; otherwise below the true root by
/// less than one thousand-millionth (1e-9), and the same on every machine. `None` for a number
/// below 0 and on overflow.
pub fn square_root(value: Exact) -> Option<Exact> {
    let numer = u128::try_from(value.numer()).ok()?;
    let denom = u128::try_from(value.denom()).ok()?;
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
    value.numer() as f64 / value.denom() as f64
}
