//! A key that is needed is not there, or has no value.
//!
//! ## Why it matters
//! Some facts have no safe default. A booklet without an edition cannot be told from the one before
//! it when a maker writes for help.
//!
//! ## Wrong
//! ```yaml
//! title:
//! ```
//!
//! ## Right
//! ```yaml
//! title: Tide Pouch
//! ```
//!
//! ## Limits
//! A booklet needs `title`, `edition`, `sizes` and `parts`; a piece needs an `outline` with a
//! shape; an expectation needs `that`; an entry in the record of editions needs `edition`; a waiver
//! needs `check`; a shared part needs `file`. Everything else may be left out.

use crate::diag::{Check, Group};

/// A key that is needed is not there, or has no value.
pub static KEY_MISSING: Check =
    Check::error("key-missing", Group::Facts, include_str!("key_missing.rs")).breaking().unread();
