//! A row of long stitches lets an edge be eased into a shorter one.
//!
//! ## How to write it
//! Name the edge. The stitch length belongs to it; how much is eased in is said where the edge is sewn, with
//! `ease:`.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [31 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {easestitch: strap.top, allowance: 8 mm (5/16 in), stitch: 4 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, ease: 1 cm}
//! ```
//!
//! Easestitch the long edge of the strap, and sew it to the tab.
//! ````
//!
//! ## What it needs
//! No seam holds the edge yet.
//!
//! ## What it changes
//! Nothing of the state.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Easestitch, include_str!("easestitch.rs"), easestitch);

fn easestitch(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.check_prepared(deed);
}
