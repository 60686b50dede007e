//! A size is named that the booklet does not have, or there are more values than sizes.
//!
//! ## Why it matters
//! A value for a size that does not exist is a value that some other size was meant to have.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   height: {small: 12 cm, lrage: 15 cm}
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   height: {small: 12 cm, large: 15 cm}
//! ```
//!
//! ## Limits
//! Looks at values by size, at `for` of parts, steps, fabrics, notions and pieces, and at choices
//! in the words. Sizes are called by their short names, the ones before the colon under `sizes:`; a
//! view's name stands for all its sizes.

use crate::diag::{Check, Group};

/// A size is named that the booklet does not have, or there are more values than sizes.
pub static SIZE_UNKNOWN: Check = Check::error("size-unknown", Group::Facts, include_str!("size_unknown.rs")).breaking();
