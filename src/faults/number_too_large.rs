//! A result is too large, or too finely divided, to be held exactly.
//!
//! ## Why it matters
//! Every figure is kept exact until it is printed. One that no longer can be would have to be
//! guessed, and no seam is that long.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   far: 90000000000000000 m
//! finished:
//!   Field: far * far
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   far: 90 cm (35 3/8 in)
//! finished:
//!   Field: far * far
//! ```
//!
//! ## Limits
//! Rounding a part of a long formula, `round(x, 1 mm)`, brings a result that is too finely divided
//! back within bounds.

use crate::diag::{Check, Group};

/// A result is too large, or too finely divided, to be held exactly.
pub static NUMBER_TOO_LARGE: Check =
    Check::error("number-too-large", Group::Facts, include_str!("number_too_large.rs")).breaking();
