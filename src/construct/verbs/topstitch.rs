//! A row of stitches is sewn on the right side, beside an edge or a seam.
//!
//! ## How to write it
//! Name the edge, or what is stitched on with the piece that it is stitched to. `allowance` is the distance
//! from the edge; the stitch length belongs to it.
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
//! - {topstitch: strap.top, allowance: 3 mm (1/8 in), stitch: 3 mm}
//! ```
//!
//! Sew, press and topstitch the long edge.
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
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Topstitch, include_str!("topstitch.rs"), topstitch);

fn topstitch(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.topstitch(deed);
}
