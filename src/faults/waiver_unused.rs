//! A waiver waives nothing.
//!
//! ## Why it matters
//! A waiver that is left standing would hide the next fault of that kind in its place, one that
//! nobody has looked at.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams {#look}
//!
//! <!-- waive loose-measurement: the ruler has only these marks -->
//!
//! Look at every seam.
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
//! A comment waives what lies in its own step, or in the whole file when it stands before the first
//! step; in a diagram, the whole drawing; an entry under `waive:` in the facts, what `at:` names. A
//! waiver of a check that does not exist, or that cannot be waived, is told here too; it takes
//! nothing away.

use crate::diag::{Check, Group};

/// A waiver waives nothing.
pub static WAIVER_UNUSED: Check = Check::warning("waiver-unused", Group::Waivers, include_str!("waiver_unused.rs"));
