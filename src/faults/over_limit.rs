//! There is more of something than any booklet needs.
//!
//! ## Why it matters
//! A slip of the keyboard can ask for five thousand pieces instead of five, and a file that a stranger sent may
//! mean to stall whoever opens it. The limits lie far above what a pattern holds; where one is met, something
//! else was meant, and nothing more is reckoned.
//!
//! ## Wrong
//! ```md
//! ## Look at the table {#look}
//!
//! |1|2|3|4|5|6|7|8|9|10|11|12|13|14|15|16|17|18|19|20|21|22|23|24|25|26|27|28|29|30|31|32|33|34|35|36|37|38|39|40|41|
//! |-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|-|
//! |1|2|3|4|5|6|7|8|9|10|11|12|13|14|15|16|17|18|19|20|21|22|23|24|25|26|27|28|29|30|31|32|33|34|35|36|37|38|39|40|41|
//! ```
//!
//! ## Right
//! ```md
//! ## Look at the table {#look}
//!
//! |front|back|
//! |-|-|
//! |left|right|
//! ```
//!
//! ## Limits
//! Each limit is told where it is met; the README lists them. How large a file may be is told by
//! `file-unreadable`, and how deep lists may lie in one another by `nested-too-deep`.

use crate::diag::{Check, Group};

/// There is more of something than any booklet needs.
pub static OVER_LIMIT: Check = Check::error("over-limit", Group::Facts, include_str!("over_limit.rs")).unread();
