//! Nothing in the list of stocked lengths is long enough.
//!
//! ## Why it matters
//! A zip that no shop sells in the length that is needed leaves the maker of that size without one.
//!
//! ## Wrong
//! ```yaml
//! notions:
//!   zip: {kind: zip, name: Zip, length: "stock(width + 6 cm, [15 cm, 20 cm, 25 cm])"}
//! ```
//! …while `width` is 20 cm in the large size.
//!
//! ## Right
//! ```yaml
//! finished:
//!   Zip: "stock(width + 6 cm, [20 cm, 25 cm, 30 cm])"
//! ```
//!
//! ## Limits
//! The list is yours; whether shops sell those lengths is not known here.

use crate::diag::{Check, Group};

/// Nothing in the list of stocked lengths is long enough.
pub static NO_STOCK_LENGTH: Check =
    Check::error("no-stock-length", Group::Facts, include_str!("no_stock_length.rs")).breaking();
