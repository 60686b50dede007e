//! A page cannot be set.
//!
//! ## Why it matters
//! Nothing is written until every page of every size can be set, so that no maker is handed half a
//! booklet.
//!
//! ## Wrong
//! ```typ
//! #let step(data) = [#data.title
//! ```
//! …in a template of the booklet's own: a bracket is never closed.
//!
//! ## Right
//! ```yaml
//! style: {accent: "#1f5f6b"}
//! ```
//! …and no template of one's own: the templates of the house are used.
//!
//! ## Limits
//! Found by `build`, not by `check`. The likeliest causes are a template in the booklet's own
//! folder `templates`, and a picture that is damaged. The fact is told in the words of the
//! typesetter.

use crate::diag::{Check, Group};

/// A page cannot be set.
pub static TYPESETTING_FAILED: Check =
    Check::error("typesetting-failed", Group::Print, include_str!("typesetting_failed.rs"));
