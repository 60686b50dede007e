//! A manifest of a published edition cannot be read, or is not of this booklet.
//!
//! ## Why it matters
//! What has changed since an edition is told from its manifest. One that is damaged, or that somebody edited, would
//! tell buyers of changes that there are not, or keep silent of one that there is.
//!
//! ## Wrong
//! ```json
//! {"format": 1, "booklet": "tide-pouch"
//! ```
//! …which breaks off.
//!
//! ## Right
//! ```yaml
//! edition: 1.0.0
//! ```
//! …and its folder as it was published: `notchbook errata published/tide-pouch/1.0.0 tide-pouch`.
//!
//! ## Limits
//! Found by `publish` and by `errata`. A manifest is read whole or not at all: keys that this program does not know,
//! figures that are no fractions, and places that do not fit together are told. Its schema lies beside it.

use crate::diag::{Check, Group};

/// A manifest of a published edition cannot be read, or is not of this booklet.
pub static MANIFEST_UNREADABLE: Check =
    Check::error("manifest-unreadable", Group::Print, include_str!("manifest_unreadable.rs"));
