//! The text for the shop has more letters than the shop takes.
//!
//! ## Why it matters
//! A shop cuts off what is too long, and what stands last is what is needed and how large the thing is.
//!
//! ## Wrong
//! ```yaml
//! shop: {letters: 100}
//! ```
//!
//! ## Right
//! ```yaml
//! shop: {letters: 4000}
//! ```
//!
//! ## Limits
//! Found by `publish`, not by `check`. The plain text is counted, not the Markdown. Without `letters:` it may have 4,000
//! (common practice, no source): look at the terms of the shop.

use crate::diag::{Check, Group};

/// The text for the shop has more letters than the shop takes.
pub static SHOP_TEXT_TOO_LONG: Check =
    Check::error("shop-text-too-long", Group::Print, include_str!("shop_text_too_long.rs"));
