//! A value is not given for every size.
//!
//! ## Why it matters
//! The size without a figure could not be printed, or, worse, would borrow its neighbour's.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   height: {small: 12 cm}
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   height: {small: 12 cm, large: 15 cm}
//! ```
//!
//! ## Limits
//! One value without a list holds for every size and is never missing. Words that leave a size out
//! are told by `choice-not-covered`. In a pattern for several things a value may leave whole views out;
//! it is missing where one of them uses it all the same.

use crate::diag::{Check, Group};

/// A value is not given for every size.
pub static SIZE_MISSING: Check = Check::error("size-missing", Group::Facts, include_str!("size_missing.rs")).breaking();
