//! A file for the shop is larger than the shop takes.
//!
//! ## Why it matters
//! A shop refuses a file above its limit, often at the very end of the upload.
//!
//! ## Wrong
//! ```yaml
//! shop: {largest: 20 kB}
//! ```
//!
//! ## Right
//! ```yaml
//! shop: {largest: 20 MB}
//! ```
//!
//! ## Limits
//! Found by `publish`, not by `check`. Without `largest:` a file may have 20 MB (common practice, no source): look at the
//! terms of the shop. Photographs are what makes a booklet large; drawings are small.

use crate::diag::{Check, Group};

/// A file for the shop is larger than the shop takes.
pub static FILE_TOO_LARGE: Check = Check::error("file-too-large", Group::Print, include_str!("file_too_large.rs"));
