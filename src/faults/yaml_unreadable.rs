//! The facts break off: a line of YAML cannot be read.
//!
//! ## Why it matters
//! From the line that cannot be read onward, no figure can be trusted, so nothing further is looked
//! at until it is mended.
//!
//! ## Wrong
//! ```yaml
//! title: Tide Pouch: a small flat bag
//! ```
//!
//! ## Right
//! ```yaml
//! title: "Tide Pouch: a small flat bag"
//! ```
//!
//! ## Limits
//! The usual causes are a second colon on a line, a tab at the start of a line, and brackets or
//! quotes that are never closed. `&`, `*` and `!` at the start of a value, `<<`, and a second set
//! of facts after `---` have meanings of their own in YAML, which a booklet does not use: put such
//! words in double quotes. The facts of a work block are read by the same rules.

use crate::diag::{Check, Group};

/// The facts break off: a line of YAML cannot be read.
pub static YAML_UNREADABLE: Check =
    Check::error("yaml-unreadable", Group::Facts, include_str!("yaml_unreadable.rs")).unread();
