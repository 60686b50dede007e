//! The braces of a heading cannot be read.
//!
//! ## Why it matters
//! Braces that are misread leave a step in every size when it was meant for one, and makers of the
//! others sew what they ought not to.
//!
//! ## Wrong
//! ````md
//! ## Add a pocket {#pocket for="large"}
//!
//! Add a pocket.
//! ````
//!
//! ## Right
//! ````md
//! ## Add a pocket {#pocket for=large}
//!
//! Add a pocket.
//! ````
//!
//! ## Limits
//! Sizes follow `for=` with commas between them, and take no quotes and no spaces. Nothing else may
//! stand in a heading's braces but one id after `#`. Only the headings of parts and steps take braces.

use crate::diag::{Check, Group};

/// The braces of a heading cannot be read.
pub static FOR_UNREADABLE: Check =
    Check::error("for-unreadable", Group::Words, include_str!("for_unreadable.rs")).breaking();
