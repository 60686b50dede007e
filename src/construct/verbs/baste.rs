//! Layers are held with long stitches until they are sewn.
//!
//! ## How to write it
//! Name the edges or the pieces. The stitch length belongs to it; `allowance` is the distance from the edge.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {baste: [strap.top, tab.top], allowance: 5 mm (3/16 in), stitch: 4 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Baste the long edges, then sew them.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! Nothing of the state: the edges are still raw until a seam holds them.

use super::entry::{VerbEntry, nothing};
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Baste, include_str!("baste.rs"), nothing);
