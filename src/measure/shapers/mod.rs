//! Formulas of the trade that authors would otherwise have to work out themselves: how large a
//! corner to take out, how long a strip becomes, how wide to cut a binding.
//!
//! Every function works on exact numbers, lengths in mm and areas in mm², and gives `None` when the
//! figures it is given make no sense or the result cannot be held. [`SHAPERS`] lists them all.

mod bias;
mod circle;
mod strips;
mod table;

use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed};

use super::{Exact, ratio};

pub use bias::{bias_joins, bias_length, bias_square};
pub use circle::{circle_hem, circle_radius};
pub use strips::{
    binding_double, binding_single, boxed_corner, boxed_depth, boxed_side, gathered, joined_strips, lining_within,
    zip_tape,
};
pub use table::{Argument, SHAPERS, ShaperDoc};

/// The ratio of the length round a circle to its width, as a ratio of two whole numbers: its first
/// sixteen figures, 3.141 592 653 589 793. On a circle as large as the earth it is wrong by less
/// than a thousandth of a millimetre. The figures are those of the constant `PI` of the Rust
/// standard library.
pub fn pi() -> Exact {
    Exact::new_raw(3_141_592_653_589_793, 1_000_000_000_000_000)
}

fn add(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_add(&right)
}

fn sub(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_sub(&right)
}

fn mul(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_mul(&right)
}

fn div(left: Exact, right: Exact) -> Option<Exact> {
    left.checked_div(&right)
}

fn double(value: Exact) -> Option<Exact> {
    mul(value, Exact::from_integer(2))
}

fn half(value: Exact) -> Option<Exact> {
    mul(value, ratio(1, 2)?)
}

/// The value when it is above 0.
fn above_0(value: Exact) -> Option<Exact> {
    value.is_positive().then_some(value)
}

/// The value when it is 0 or more.
fn not_below_0(value: Exact) -> Option<Exact> {
    (!value.is_negative()).then_some(value)
}
