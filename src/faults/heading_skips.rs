//! A heading leaves a level out, or words stand where no heading opens them.
//!
//! ## Why it matters
//! Parts and steps are what a maker finds her place by, with eyes or ears. A level that is skipped
//! sounds like a step that was lost.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! Every seam should be caught at both ends.
//!
//! #### If one is not
//!
//! Sew over it again.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Every seam should be caught at both ends.
//!
//! ### If one is not
//!
//! Sew over it again.
//! ````
//!
//! ## Limits
//! A file begins with the heading of its part, `#`; steps are `##`; headings inside a step begin at
//! `###`, and an introduction has none. Words or a step before the first `#`, and a file without
//! any heading, are told here too. So are words before the first question of `help:`; each question is a `##`.

use crate::diag::{Check, Group};

/// A heading leaves a level out, or words stand where no heading opens them.
pub static HEADING_SKIPS: Check = Check::error("heading-skips", Group::Words, include_str!("heading_skips.rs"));
