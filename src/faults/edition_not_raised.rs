//! What was published has changed, and the edition's number has not risen.
//!
//! ## Why it matters
//! Two copies with one number and different figures cannot be told apart, neither by the makers who bought them nor by
//! whoever answers their letters. What was published once is never replaced.
//!
//! ## Wrong
//! ```yaml published
//! edition: 1.0.0
//! ```
//! …as it was published, with a width of 15 cm, and then
//! ```yaml
//! edition: 1.0.0
//! measurements:
//!   width: [16 cm (6 1/4 in), 20 cm (7 7/8 in)]
//! ```
//!
//! ## Right
//! ```yaml
//! edition: 1.1.0
//! editions:
//!   - {edition: 1.1.0, changes: The small pouch is wider.}
//!   - {edition: 1.0.0, changes: First edition.}
//! ```
//!
//! ## Limits
//! Found by `publish` and by `errata`, which read the manifests of what was published before. A change of the words
//! alone is a change too. Editions with names instead of numbers only have to differ.

use crate::diag::{Check, Group};

/// What was published has changed, and the edition's number has not risen.
pub static EDITION_NOT_RAISED: Check =
    Check::error("edition-not-raised", Group::Print, include_str!("edition_not_raised.rs"));
