//! A diagram is larger than the page takes.
//!
//! ## Why it matters
//! It would run over the edge, or be shrunk until its words cannot be read.
//!
//! ## Wrong
//! ```svg
//! <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 260 44" width="260mm">
//!   <rect class="right-side" x="5" y="4" width="250" height="30"/>
//! </svg>
//! ```
//!
//! ## Right
//! ```svg
//! <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 150 44" width="150mm">
//!   <rect class="right-side" x="5" y="4" width="140" height="30"/>
//! </svg>
//! ```
//!
//! ## Limits
//! A diagram may be 156 mm wide and 200 mm high: what A4 (ISO 216) leaves beside the margins and
//! the step numbers. One of up to 76 mm stands beside its words. Each size is measured by itself,
//! since formulas may stretch a drawing.

use crate::diag::{Check, Group, Home};

/// A diagram is larger than the page takes.
pub static FIGURE_TOO_WIDE: Check =
    Check::error("figure-too-wide", Group::Figures, include_str!("figure_too_wide.rs")).waivable_in(Home::Words);
