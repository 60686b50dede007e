//! A flat bag gains a base: the side seam is laid on the base seam, and sewn across.
//!
//! ## How to write it
//! Name the two edges of a corner that was taken out. It names its `allowance` and its `stitch` length, like `sew`.
//!
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam], corners_out: {bottom: [2 cm, 2 cm]}}
//!     allowance: {all: seam}
//!     grain: vertical
//!     cut: {outer: [front, back]}
//! ```
//! ````md
//! ## Box the corners {#box}
//!
//! ```work
//! - {box: [front.bottom_left_corner, back.bottom_left_corner], allowance: seam, stitch: 2.5 mm}
//! - {box: [front.bottom_right_corner, back.bottom_right_corner], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Box both corners.
//! ````
//!
//! ## What it needs
//! The seams on both sides of the corner are sewn.
//!
//! ## What it changes
//! The corner is closed, and the thing is no longer flat.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Box, include_str!("box.rs"), box_corners);

fn box_corners(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let corners = edges(&deed.targets);
    player.check_allowance(deed.work, &corners, deed.moment);
    for (copy, corner) in &corners {
        for beside in beside(player, *copy, *corner) {
            if player.state.is_sewn(*copy, beside) {
                continue;
            }
            // A seam that never comes leaves its edge raw, which is told by itself.
            if let Some(sewn) = player.sewn_later(*copy, beside, deed.moment) {
                let corner = player.edition.edge_name(*copy, *corner);
                let edge = player.edition.edge_name(*copy, beside);
                player.faults.push(Fault::BoxedTooSoon { corner, edge, boxed: deed.moment, sewn });
                break;
            }
        }
    }
    player.join(deed);
}

/// The edges on both sides of an edge.
fn beside(player: &Player<'_>, copy: CopyId, edge: EdgeId) -> Vec<EdgeId> {
    let edges = player.edition.edges_of(copy);
    let Some(at) = edges.iter().position(|known| *known == edge) else { return Vec::new() };
    let count = edges.len();
    vec![edges[(at + count - 1) % count], edges[(at + 1) % count]]
}
