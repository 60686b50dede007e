//! A dart, a pleat or a mark does not lie on its piece.
//!
//! ## Why it matters
//! The maker looks for it on the sheet and on the cloth: a dart whose point lies beyond the edge cannot be sewn,
//! and a button marked off the piece has nothing to be sewn to.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     darts:
//!       waist: {edge: top, at: 90 cm, width: 2 cm, length: 6 cm}
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     darts:
//!       waist: {edge: top, at: 6 cm, width: 2 cm, length: 6 cm}
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Limits
//! Each size is looked at by itself. Points are counted in the outline's own drawing: for a rectangle from its
//! upper left corner, across and down. All of a dart lies on the piece, its mouth on the one edge, and its point
//! more nearly straight in from the mouth than along the edge. Darts and pleats do not lie over one another. A
//! place on an edge that is not there is told by `edge-unknown`.

use crate::diag::{Check, Group};

/// A dart, a pleat or a mark does not lie on its piece.
pub static OFF_PIECE: Check = Check::error("off-piece", Group::Facts, include_str!("off_piece.rs"));
