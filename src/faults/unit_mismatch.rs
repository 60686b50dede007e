//! Two quantities do not go together, or do not fit their place.
//!
//! ## Why it matters
//! Three what? Added to a width, a bare 3 may have been meant as centimetres or inches, and both
//! would look right on the page.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: width + 3
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: width + 3 cm
//! ```
//!
//! ## Limits
//! Lengths, areas, angles, temperatures, times, weights and plain numbers are kept apart. A length
//! times a length is an area; a length over a length is a plain number. Temperatures are not
//! reckoned with at all. A figure in both systems, `1 cm (3/8 in)`, must say one thing in each;
//! whether the two agree is told by `both-systems-disagree`.

use crate::diag::{Check, Group};

/// Two quantities do not go together, or do not fit their place.
pub static UNIT_MISMATCH: Check =
    Check::error("unit-mismatch", Group::Facts, include_str!("unit_mismatch.rs")).breaking();
