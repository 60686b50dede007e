//! An edge is drawn up on long stitches.
//!
//! ## How to write it
//! Name the edge; the stitch length belongs to it. How long it becomes is said where it is sewn, with
//! `gather:`.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [40 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [26 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {gather: strap.top, stitch: 4 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, gather: 24 cm}
//! ```
//!
//! Gather the long edge of the strap, and sew it to the tab.
//! ````
//!
//! ## What it needs
//! The piece is cut, and no seam holds the edge yet.
//!
//! ## What it changes
//! The edge fits an edge of another length from here on.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Gather, include_str!("gather.rs"), gather);

fn gather(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.check_prepared(deed);
    player.each_edge(&deed.all, |edge| edge.gathered = true);
}
