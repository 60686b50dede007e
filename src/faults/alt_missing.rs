//! A diagram has no words for those who cannot see it.
//!
//! ## Why it matters
//! Those who have the booklet read aloud to them sew by the words alone. A diagram without any is a
//! gap in their instructions.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! Compare the seams with the diagram.
//!
//! ![](figures/press.svg)
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Compare the seams with the diagram.
//!
//! ![The pouch, right side up](figures/press.svg)
//! ````
//!
//! ## Limits
//! Also looks for `cover_alt:` beside `cover:`. Whether the words say what the diagram shows, only
//! a reader can judge. Text alternatives for pictures are asked for by WCAG 2.2, success criterion
//! 1.1.1.

use crate::diag::{Check, Group};

/// A diagram has no words for those who cannot see it.
pub static ALT_MISSING: Check = Check::error("alt-missing", Group::Words, include_str!("alt_missing.rs"));
