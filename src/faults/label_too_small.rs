//! Words in a diagram are printed too small to read.
//!
//! ## Why it matters
//! The booklet lies beside the machine, at arm's length, often in evening light.
//!
//! ## Wrong
//! ```svg
//! <text class="label" style="font-size: 2px" x="5" y="20">Front</text>
//! ```
//!
//! ## Right
//! ```svg
//! <text class="label" x="5" y="20">Front</text>
//! ```
//!
//! ## Limits
//! Measures type as it comes out on paper, after the drawing is fitted to the page: 7 points are
//! the least (common practice, no source). The class `label` is large enough when one unit of the
//! drawing is one millimetre on paper.

use crate::diag::{Check, Group, Home};

/// Words in a diagram are printed too small to read.
pub static LABEL_TOO_SMALL: Check =
    Check::error("label-too-small", Group::Figures, include_str!("label_too_small.rs")).waivable_in(Home::Words);
