//! A row of stitches is sewn very close to an edge or a seam, on the right side.
//!
//! ## How to write it
//! Name the edge. The stitch length belongs to it; the distance, a needle from the edge, need not be said.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - press: [strap, tab]
//! - {edgestitch: strap.top, stitch: 2.5 mm}
//! ```
//!
//! Sew, press and edgestitch the long edge.
//! ````
//!
//! ## What it needs
//! The seam beside it is sewn and pressed.
//!
//! ## What it changes
//! An edge that was folded under before is held by the stitches, and no longer raw.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Edgestitch, include_str!("edgestitch.rs"), edgestitch);

fn edgestitch(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.topstitch(deed);
}
