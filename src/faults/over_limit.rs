//! There is more of something than any booklet needs.
//!
//! ## Why it matters
//! A slip of the keyboard can ask for five thousand pieces instead of five, and a file that a stranger sent may
//! mean to stall whoever opens it. The limits lie far above what a pattern holds; where one is met, something
//! else was meant, and nothing more is reckoned.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     cut: {outer: 5000}
//! ```
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     cut: {outer: 5}
//! ```
//!
//! ## Limits
//! Each limit is told where it is met; the README lists them. How large a file may be is told by
//! `file-unreadable`, and how deep lists may lie in one another by `nested-too-deep`.

use crate::diag::{Check, Group};

/// There is more of something than any booklet needs.
pub static OVER_LIMIT: Check = Check::error("over-limit", Group::Facts, include_str!("over_limit.rs")).unread();
