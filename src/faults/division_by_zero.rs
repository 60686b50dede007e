//! A formula divides by nothing.
//!
//! ## Why it matters
//! Most often two measurements cancel out in one size only, so the fault hides until someone sews
//! that size.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Repeats: height / (width - 15 cm)
//! ```
//! …while `width` is 15 cm in the small size.
//!
//! ## Right
//! ```yaml
//! finished:
//!   Repeats: height / width
//! ```
//!
//! ## Limits
//! Every size is worked out, and the finding names those in which the divisor comes to nothing.

use crate::diag::{Check, Group};

/// A formula divides by nothing.
pub static DIVISION_BY_ZERO: Check =
    Check::error("division-by-zero", Group::Facts, include_str!("division_by_zero.rs")).breaking();
