//! A shape has a class that the house style does not know.
//!
//! ## Why it matters
//! The class gives a shape its colour and its entry in the key to the diagrams. Without it a right
//! side is drawn in no colour at all.
//!
//! ## Wrong
//! ```svg
//! <rect class="rightside" x="5" y="4" width="30" height="20"/>
//! ```
//!
//! ## Right
//! ```svg
//! <rect class="right-side" x="5" y="4" width="30" height="20"/>
//! ```
//!
//! ## Limits
//! Classes that your drawing styles by itself are told as well: waive them in the drawing, with a
//! comment. Of a choice by size, classes that the house style does not know are not told.

use crate::diag::{Check, Group, Home};

/// A shape has a class that the house style does not know.
pub static CLASS_UNKNOWN: Check =
    Check::warning("class-unknown", Group::Figures, include_str!("class_unknown.rs")).waivable_in(Home::Words);
