//! A step names an edge that the piece does not have.
//!
//! ## Why it matters
//! Which edge is meant, the maker cannot ask. And where an edge has no name, nothing about its
//! length, its notches or its allowance can be checked.
//!
//! ## Wrong
//! ````md
//! ## Finish the edge {#edge}
//!
//! ```work
//! - topstitch: front.tpo
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Right
//! ````md
//! ## Finish the edge {#edge}
//!
//! ```work
//! - topstitch: front.top
//!   stitch: 3 mm
//! ```
//!
//! Topstitch the top edge.
//! ````
//!
//! ## Limits
//! A rectangle has `top`, `right`, `bottom` and `left`, and a corner taken out adds one more, such
//! as `bottom_left_corner`; a path has the edges that you named; a zip has `tape_a`, `tape_b`,
//! `start` and `end`. Looks at work and at notches. Each edge is told once.

use crate::diag::{Check, Group};

/// A step names an edge that the piece does not have.
pub static EDGE_UNKNOWN: Check = Check::error("edge-unknown", Group::Work, include_str!("edge_unknown.rs"));
