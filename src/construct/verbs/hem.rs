//! An edge is turned under and stitched.
//!
//! ## How to write it
//! Name the edges. `allowance` is the whole width that is turned under; the stitch length belongs to it. A hem
//! that becomes a casing says what it is to `leave` open for the elastic.
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
//! - {hem: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Turn the long edges under and stitch them.
//! ````
//!
//! ## What it needs
//! The allowance, where it is stated, is the one that the piece has.
//!
//! ## What it changes
//! The edge is finished, and no longer raw. A gap is open until it is closed.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::{Player, edges};
use crate::construct::slits;
use crate::construct::state::HemGap;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Hem, include_str!("hem.rs"), hem);

/// How an edge was finished that is hemmed.
pub(super) const HEMMED: &str = "hemmed";

fn hem(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    slits::neaten(player, deed, false);
    player.check_allowance(deed.work, &edges(&deed.targets), deed.moment);
    player.check_places(deed);
    for (copy, edge) in player.edges_of(&deed.all) {
        let share = player.shares(deed, copy, edge);
        player.finish_edge((copy, edge), share, HEMMED, deed.moment);
    }
    if let Some(leave) = &deed.work.work.leave {
        let edges = player.edges_of(&deed.all);
        player.state.hem_gaps.push(HemGap { edges, sewn: deed.moment, leave: leave.span(), closed: None });
    }
}
