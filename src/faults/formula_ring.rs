//! Formulas lean on one another in a ring, so that none can be worked out.
//!
//! ## Why it matters
//! If the width is the height plus something and the height is the width plus something, neither
//! can be cut.
//!
//! ## Wrong
//! ```yaml
//! measurements:
//!   width: height * 2
//!   height: width / 2
//! ```
//!
//! ## Right
//! ```yaml
//! measurements:
//!   width: height * 2
//!   height: [12 cm (4 3/4 in), 15 cm (5 7/8 in)]
//! ```
//!
//! ## Limits
//! The finding stands at the first name of the ring in the file and names the others. The order in
//! which measurements are written does not matter.

use crate::diag::{Check, Group};

/// Formulas lean on one another in a ring, so that none can be worked out.
pub static FORMULA_RING: Check = Check::error("formula-ring", Group::Facts, include_str!("formula_ring.rs")).breaking();
