//! The same key is written twice in one place.
//!
//! ## Why it matters
//! Only one of the two can be meant. Were the wrong one taken in silence, a whole print run would
//! carry its figure.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   seam: 1 cm (3/8 in)
//!   seam: 5 mm (3/16 in)
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   seam: 1 cm (3/8 in)
//! ```
//!
//! ## Limits
//! Looks at keys that stand side by side. One name for two different things, a measurement and a
//! piece, say, is told by `name-twice`.

use crate::diag::{Check, Group};

/// The same key is written twice in one place.
pub static DUPLICATE_KEY: Check = Check::error("duplicate-key", Group::Facts, include_str!("duplicate_key.rs"));
