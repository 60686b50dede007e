//! A diagram reaches for something outside its own file.
//!
//! ## Why it matters
//! What it reaches for is not there when the booklet is made on another machine or a year later,
//! and the drawing comes out with a hole in it.
//!
//! ## Wrong
//! ```svg
//! <image x="5" y="4" width="30" height="20" href="fabric-photo.png"/>
//! ```
//!
//! ## Right
//! ```svg
//! <rect class="right-side" x="5" y="4" width="30" height="20"/>
//! ```
//!
//! ## Limits
//! A part of the same drawing (`#id`) and the symbols of the house are in order, and so is a
//! picture that is stored inside the drawing itself. Names of languages at the top of a file
//! (`xmlns`) look like addresses and are none.

use crate::diag::{Check, Group};

/// A diagram reaches for something outside its own file.
pub static OUTSIDE_LINK: Check = Check::error("outside-link", Group::Figures, include_str!("outside_link.rs"));
