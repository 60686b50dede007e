//! An edge is enclosed in a strip.
//!
//! ## How to write it
//! Name the edges and, if it is a notion or a piece of its own, the strip. The stitch length belongs to it.
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
//! - {bind: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Bind the long edges.
//! ````
//!
//! ## What it needs
//! The allowance, where it is stated, is the one that the piece has.
//!
//! ## What it changes
//! The edge is finished, and no longer raw.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::{Player, edges};
use crate::construct::slits;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Bind, include_str!("bind.rs"), bind);

fn bind(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    slits::neaten(player, deed, false);
    slits::check_strip(player, deed);
    player.check_allowance(deed.work, &edges(&deed.targets), deed.moment);
    player.check_places(deed);
    for (copy, edge) in player.edges_of(&deed.all) {
        let share = player.shares(deed, copy, edge);
        player.finish_edge((copy, edge), share, "bound", deed.moment);
    }
}
