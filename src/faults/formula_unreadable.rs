//! A formula or a figure cannot be read.
//!
//! ## Why it matters
//! A figure that can be read in two ways, `1,5 cm` or `3 / 8 in`, is better asked about than
//! guessed at: the guess would be cut into cloth.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: width 2
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: width * 2
//! ```
//!
//! ## Limits
//! Besides formulas in the facts this covers braces in the words and in diagrams: empty ones, ones
//! that are never closed, and a word after the bar that is no unit and not `words`, `first` or
//! `second`.

use crate::diag::{Check, Group};

/// A formula or a figure cannot be read.
pub static FORMULA_UNREADABLE: Check =
    Check::error("formula-unreadable", Group::Facts, include_str!("formula_unreadable.rs")).breaking();
