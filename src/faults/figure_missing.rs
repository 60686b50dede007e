//! A diagram that a step shows is not there, or cannot be read.
//!
//! ## Why it matters
//! Where words and hands do not suffice, the diagram is the instruction. A step would be printed
//! with a hole in it.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! Compare the seams with the diagram.
//!
//! ![Two pieces sewn on three sides](figures/sewn.svg)
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! Compare the seams with the diagram.
//!
//! ![Two pieces sewn on three sides](figures/press.svg)
//! ````
//!
//! ## Limits
//! The path is named from the file that mentions it. Where it holds `{size}`, there must be a
//! drawing for each size that has the step.

use crate::diag::{Check, Group};

/// A diagram that a step shows is not there, or cannot be read.
pub static FIGURE_MISSING: Check = Check::error("figure-missing", Group::Words, include_str!("figure_missing.rs"));
