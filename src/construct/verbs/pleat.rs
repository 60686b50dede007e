//! Pleats are folded and laid to their side.
//!
//! ## How to write it
//! Describe the pleats under `pleats:` of the piece, and name them here, or name the whole piece for all its pleats.
//! Pins or basting hold them until their edge is sewn.
//!
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     pleats: {front: {edge: top, at: centre, depth: 2 cm, laid: left}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [26 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - pleat: strap.front
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Lay the pleat, and sew the strap to the tab.
//! ````
//!
//! ## What it needs
//! The piece is cut, and the edge with the pleats is not sewn yet.
//!
//! ## What it changes
//! The edge is shorter by twice the depth of each fold.

use super::entry::VerbEntry;
use crate::construct::shaped::close_inside;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Pleat, include_str!("pleat.rs"), close_inside);
