//! A dart, a pleat or a mark does not lie on its piece.
//!
//! ## Why it matters
//! The maker looks for it on the sheet and on the cloth: a dart whose point lies beyond the edge cannot be sewn,
//! and a button marked off the piece has nothing to be sewn to.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     darts: {shaping: {edge: top, at: 40 cm, width: 2 cm, length: 8 cm}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: 1}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {dart: strap.shaping, stitch: 2.5 mm}
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Right
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     darts: {shaping: {edge: top, at: 12 cm, width: 2 cm, length: 8 cm}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: 1}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - {dart: strap.shaping, stitch: 2.5 mm}
//! ```
//!
//! Make the strap.
//! ````
//!
//! ## Limits
//! Each size is looked at by itself. Points are counted in the outline's own drawing: for a rectangle from its
//! upper left corner, across and down. All of a dart lies on the piece, its mouth on the one edge, and its point
//! more nearly straight in from the mouth than along the edge. Darts and pleats do not lie over one another. A
//! place on an edge that is not there is told by `edge-unknown`.

use crate::diag::{Check, Group};

/// A dart, a pleat or a mark does not lie on its piece.
pub static OFF_PIECE: Check = Check::error("off-piece", Group::Facts, include_str!("off_piece.rs"));
