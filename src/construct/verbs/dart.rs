//! A dart is sewn from its mouth to its point.
//!
//! ## How to write it
//! Describe the dart under `darts:` of the piece, and name it here, or name the whole piece for all its darts. The
//! stitch length belongs to it.
//!
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [30 cm, 14 cm]}
//!     darts: {shaping: {edge: top, at: centre, width: 2 cm, length: 8 cm}}
//!     allowance: seam
//!     raw: all
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [28 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {dart: strap.shaping, stitch: 2.5 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Sew the dart, and sew the strap to the tab.
//! ````
//!
//! ## What it needs
//! The piece is cut, and the edge at which the dart opens is not sewn yet.
//!
//! ## What it changes
//! The edge is as long as with the dart closed, and the piece no longer lies flat.

use super::entry::VerbEntry;
use crate::construct::shaped::close_inside;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Dart, include_str!("dart.rs"), close_inside);
