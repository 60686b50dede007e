//! A work block does not say what is done to what.
//!
//! ## Why it matters
//! The work of a step is what the checks go by and what the seam facts are printed from. A fact
//! that cannot be read checks nothing.
//!
//! ## Wrong
//! ````md
//! ## Press {#press}
//!
//! ```work
//! - iron: front
//! ```
//!
//! Press the front.
//! ````
//!
//! ## Right
//! ````md
//! ## Press {#press}
//!
//! ```work
//! - press: front
//! ```
//!
//! Press the front.
//! ````
//!
//! ## Limits
//! A fact is a verb, a colon, and names of pieces, copies, edges or notions, with plain words after
//! them if you like; plain words need a space in them, so that they are not taken for names. One
//! fact does one thing. A fence that is all but `work`, such as `wrok` or `Work`, is told too; other
//! fences are printed. Names that stand for nothing are told by `unknown-name`.

use crate::diag::{Check, Group};

/// A work block does not say what is done to what.
pub static WORK_UNREADABLE: Check =
    Check::error("work-unreadable", Group::Work, include_str!("work_unreadable.rs")).unread();
