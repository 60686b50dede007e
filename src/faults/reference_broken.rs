//! A reference leads nowhere.
//!
//! ## Why it matters
//! “Go back to step 7” helps no one when there is no such step, and a link in a printed booklet
//! cannot be followed to find out.
//!
//! ## Wrong
//! ````md
//! ## Check the seams {#check}
//!
//! Look over the seams of [](#sow).
//! ````
//!
//! ## Right
//! ````md
//! ## Check the seams {#check}
//!
//! Look over the seams of [](#sew).
//! ````
//!
//! ## Limits
//! `#` leads to a part or a step by its id; `piece:`, `notion:`, `fabric:` and `figure:` lead to
//! what has that name. A link to the world outside must be a whole address that begins with
//! `https://`, `http://` or `mailto:`; whether anything stands there is not looked at. A link that
//! Markdown cannot read is told too, since its brackets would be printed. Terms are told by
//! `term-undefined`.

use crate::diag::{Check, Group};

/// A reference leads nowhere.
pub static REFERENCE_BROKEN: Check =
    Check::error("reference-broken", Group::Words, include_str!("reference_broken.rs"));
