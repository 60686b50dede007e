//! Tucks are folded and stitched along their length.
//!
//! ## How to write it
//! Describe the tucks under `pleats:` of the piece with `kind: tuck`, and name them here, or name the whole piece for
//! all its tucks. The stitch length belongs to it.
//!
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     pleats: {pin: {edge: top, at: centre, depth: 5 mm, kind: tuck, count: 4, apart: 3 cm}}
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
//! - {tuck: strap.pin, stitch: 2.5 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Stitch the tucks, and sew the strap to the tab.
//! ````
//!
//! ## What it needs
//! The piece is cut, and the edge with the tucks is not sewn yet.
//!
//! ## What it changes
//! The edge is shorter by twice the depth of each tuck.

use super::entry::VerbEntry;
use crate::construct::shaped::close_inside;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Tuck, include_str!("tuck.rs"), close_inside);
