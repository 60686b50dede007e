//! A diagram reaches over its own frame, so that a part of it is cut off on the page.
//!
//! ## Why it matters
//!
//! The maker sees half a piece or half a word, and guesses the rest. It happens most easily in the largest size,
//! when a diagram holds formulas and its frame does not grow along.
//!
//! ## Wrong
//!
//! ```svg
//! <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 76 50" width="76mm">
//!   <rect class="right-side" x="4" y="4" width="{10 cm}" height="30"/>
//! </svg>
//! ```
//!
//! ## Right
//!
//! ```svg
//! <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 76 50" width="76mm" data-scale="1:2">
//!   <rect class="right-side" x="4" y="4" width="{10 cm}" height="30"/>
//! </svg>
//! ```
//!
//! ## Limits
//!
//! Up to a millimetre and a half passes of lines and areas, which have a rim, and a quarter of a millimetre of letters.
//! Without `data-scale` lengths are drawn at true size.

use crate::diag::{Check, Group, Home};

/// A diagram reaches over its own frame, so that a part of it is cut off on the page.
pub static FIGURE_CUT_OFF: Check =
    Check::error("figure-cut-off", Group::Figures, include_str!("figure_cut_off.rs")).waivable_in(Home::Words);
