//! Edges are held with pins or clips until they are sewn.
//!
//! ## How to write it
//! Name the edges that lie on each other.
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
//! - pin: [strap.top, tab.top]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Pin the long edges, and sew them.
//! ````
//!
//! ## What it needs
//! No seam holds the edges yet.
//!
//! ## What it changes
//! Nothing of the state: pins come out again.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Pin, include_str!("pin.rs"), pin);

fn pin(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let edges = edges(&deed.targets);
    let [first, second] = edges.as_slice() else { return };
    let seams = |edge: &(CopyId, EdgeId)| -> Vec<usize> {
        player.state.known_edge(edge.0, edge.1).map(|edge| edge.seams.clone()).unwrap_or_default()
    };
    let other = seams(second);
    if let Some(seam) = seams(first).into_iter().find(|seam| other.contains(seam)) {
        let edges = (player.edition.edge_name(first.0, first.1), player.edition.edge_name(second.0, second.1));
        let sewn = player.state.seams[seam].sewn;
        player.faults.push(Fault::PinnedTooLate { edges, pinned: deed.moment, sewn });
    }
}
