//! A waiver does not say why.
//!
//! ## Why it matters
//! The editor, or you in a year, must be able to tell a decision from an oversight.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! <!-- waive loose-measurement -->
//!
//! Hold the 15 cm ruler against every seam.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look}
//!
//! <!-- waive loose-measurement: the ruler has only these marks -->
//!
//! Hold the 15 cm ruler against every seam.
//! ````
//!
//! ## Limits
//! In the facts the reason stands behind `because:`. A waiver without a reason waives nothing.
//! Reasons are listed at the end of `notchbook check`.

use crate::diag::{Check, Group};

/// A waiver does not say why.
pub static WAIVER_WITHOUT_REASON: Check =
    Check::error("waiver-without-reason", Group::Waivers, include_str!("waiver_without_reason.rs"));
