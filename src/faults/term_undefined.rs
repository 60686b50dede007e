//! A term of the trade is pointed to and not explained.
//!
//! ## Why it matters
//! A beginner follows the term to the list of words and finds nothing there.
//!
//! ## Wrong
//! ````md
//! ## Hold the layers {#hold}
//!
//! Now [](term:baste) the layers.
//! ````
//!
//! ## Right
//! ```yaml
//! words:
//!   baste: To sew with long stitches that come out again.
//! ```
//! ````md
//! ## Hold the layers {#hold}
//!
//! Now [](term:baste) the layers.
//! ````
//!
//! ## Limits
//! Looks at references only: a term that is used without one is not looked for. It must be spelt as
//! under `words:`, capitals included.

use crate::diag::{Check, Group};

/// A term of the trade is pointed to and not explained.
pub static TERM_UNDEFINED: Check = Check::error("term-undefined", Group::Words, include_str!("term_undefined.rs"));
