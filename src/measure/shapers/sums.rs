//! What all formulas of the trade lean on: the circle, doubles and halves, and what a figure has to be.

use crate::measure::exact::Exact;

/// The ratio of the length round a circle to its width, as a ratio of two whole numbers: its first
/// sixteen figures, 3.141 592 653 589 793. On a circle as large as the earth it is wrong by less
/// than a thousandth of a millimetre. The figures are those of the constant `PI` of the Rust
/// standard library.
pub fn pi() -> Exact {
    Exact::of::<3_141_592_653_589_793, 1_000_000_000_000_000>()
}

pub(super) fn double(value: Exact) -> Option<Exact> {
    value.checked_mul(Exact::from_integer(2))
}

pub(super) fn half(value: Exact) -> Option<Exact> {
    value.checked_mul(Exact::of::<1, 2>())
}

/// The value when it is above 0.
pub(super) fn above_0(value: Exact) -> Option<Exact> {
    value.is_positive().then_some(value)
}

/// The value when it is 0 or more.
pub(super) fn not_below_0(value: Exact) -> Option<Exact> {
    (!value.is_negative()).then_some(value)
}
