//! A key has a name that the booklet does not know.
//!
//! ## Why it matters
//! A misspelt key would otherwise be passed over: the allowance or the fabric below it would
//! silently be missing.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     outine: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Limits
//! Names that are yours to choose, of sizes, measurements, fabrics, notions and pieces, are never
//! unknown.

use crate::diag::{Check, Group};

/// A key has a name that the booklet does not know.
pub static KEY_UNKNOWN: Check = Check::error("key-unknown", Group::Facts, include_str!("key_unknown.rs"));
