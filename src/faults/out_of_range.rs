//! A value or a text lies outside what can be worked with.
//!
//! ## Why it matters
//! Rounding to a step of nothing has no answer, and neither has the square root of a figure below
//! nothing: the formula says something that was not meant.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: round(width, 0 cm)
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: round(width, 5 mm)
//! ```
//!
//! ## Limits
//! Also told: a formula of more than 2000 characters, brackets nested too deep in one formula, and
//! a number with more digits than can be held.

use crate::diag::{Check, Group};

/// A value or a text lies outside what can be worked with.
pub static OUT_OF_RANGE: Check = Check::error("out-of-range", Group::Facts, include_str!("out_of_range.rs")).breaking();
