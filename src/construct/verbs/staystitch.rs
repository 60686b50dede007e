//! A row of stitches inside the allowance keeps a curved or slanted edge from stretching.
//!
//! ## How to write it
//! Name the edges. The stitch length belongs to it; `allowance` is the distance from the edge.
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
//! - {staystitch: [strap.top, tab.top], allowance: 8 mm (5/16 in), stitch: 2.5 mm}
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Staystitch the long edges at once, then sew them.
//! ````
//!
//! ## What it needs
//! The piece is as it was cut: nothing is sewn, folded or hemmed on it yet. Fusing and quilting may come before.
//!
//! ## What it changes
//! Nothing of the state.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Staystitch, include_str!("staystitch.rs"), staystitch);

fn staystitch(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for (copy, edge) in player.edges_of(&deed.targets) {
        let state = &player.state.copies[copy];
        let earlier = state.worked.filter(|worked| state.quilted != Some(*worked));
        if let Some(earlier) = earlier {
            let edge = player.edition.edge_name(copy, edge);
            player.faults.push(Fault::PreparedTooLate { edge, done: deed.moment, earlier });
            return;
        }
    }
}
