//! A piece is cut open along a line that is marked on it: a slit, a vent, a window.
//!
//! ## How to write it
//! Mark the line under `marks:` of the piece, and name it: `slash: sleeve.slit`. What is sewn or bound to the slit
//! names it in the same way.
//!
//! ```yaml
//! pieces:
//!   strap:
//!     outline: {rectangle: [20 cm, 20 cm]}
//!     allowance: seam
//!     raw: [top, right, bottom, left]
//!     marks: {slit: {line: [[10 cm, 0 cm], [10 cm, 8 cm]]}}
//!     cut: {outer: 1}
//!   tab: {outline: {rectangle: [18 cm, 4 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - slash: strap.slit
//! - {bind: [strap.slit, tab], allowance: 5 mm (3/16 in), stitch: 2.5 mm}
//! ```
//!
//! Cut the slit open and bind it.
//! ````
//!
//! ## What it needs
//! The piece is cut, and the line is marked. A slit is bound once it is cut open, along both sides: the strip is at
//! least twice as long. A facing may be sewn round the line before it is cut open.
//!
//! ## What it changes
//! The slit is open: its edges are raw until they are bound, hemmed, finished or sewn to something, and what was sewn
//! up can be turned through it.

use super::entry::VerbEntry;
use crate::construct::slits;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Slash, include_str!("slash.rs"), slits::slash);
