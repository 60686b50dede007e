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
//! A corner that is not cut out is boxed by measuring: `up` says how far from it, along its seams and from the
//! stitching, it is sewn across at a right angle. The base becomes twice as deep, the height less by it. Name the two
//! edges that meet in the corner, of each layer.
//!
//! ```yaml
//! pieces:
//!   bag: {outline: {rectangle: [20 cm, 20 cm]}, allowance: seam, raw: top, cut: {outer: [bag_front, bag_back]}}
//! ```
//! ````md
//! ## Box the bag by measuring {#box-measured}
//!
//! ```work
//! - cut: bag
//! - {sew: [bag_front.left, bag_back.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [bag_front.bottom, bag_back.bottom], allowance: seam, stitch: 2.5 mm}
//! - {sew: [bag_front.right, bag_back.right], allowance: seam, stitch: 2.5 mm}
//! - {box: [bag_front.left, bag_front.bottom, bag_back.left, bag_back.bottom], up: 3 cm (1 3/16 in), stitch: 2.5 mm}
//! - {box: [bag_front.right, bag_front.bottom, bag_back.right, bag_back.bottom], up: 3 cm (1 3/16 in), stitch: 2.5 mm}
//! ```
//!
//! Sew three sides with a {seam} allowance, and box both corners, {3 cm (1 3/16 in)} up from the stitching.
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
use crate::construct::lengths::millimetres;
use crate::construct::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Box, include_str!("box.rs"), box_corners);

fn box_corners(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    if let Some(up) = millimetres(deed.work.up) {
        return box_up(player, deed, up);
    }
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

/// A corner that was not cut out: in every layer the two edges that meet in it are sewn already.
fn box_up(player: &mut Player<'_>, deed: &Deed<'_, '_>, up: f64) {
    let named = edges(&deed.targets);
    for copy in &deed.touched {
        let own: Vec<EdgeId> = named.iter().filter(|(of, _)| of == copy).map(|(_, edge)| *edge).collect();
        let corner = <[EdgeId; 2]>::try_from(own.as_slice()).ok();
        let Some([one, other]) = corner.filter(|[one, other]| beside(player, *copy, *one).contains(other)) else {
            let copy = player.edition.cast[*copy].name.clone();
            player.faults.push(Fault::NoCorner { copy, edges: own.len(), boxed: deed.moment });
            return;
        };
        for edge in [one, other] {
            if player.state.is_sewn(*copy, edge) {
                continue;
            }
            if let Some(sewn) = player.sewn_later(*copy, edge, deed.moment) {
                let (corner, edge) = (player.edition.cast[*copy].name.clone(), player.edition.edge_name(*copy, edge));
                player.faults.push(Fault::BoxedTooSoon { corner, edge, boxed: deed.moment, sewn });
                return;
            }
        }
        player.handle(*copy, deed.moment);
        player.state.boxed.push((*copy, [one, other], up));
    }
}

/// The edges on both sides of an edge.
fn beside(player: &Player<'_>, copy: CopyId, edge: EdgeId) -> Vec<EdgeId> {
    let edges = player.edition.edges_of(copy);
    let Some(at) = edges.iter().position(|known| *known == edge) else { return Vec::new() };
    let count = edges.len();
    vec![edges[(at + count - 1) % count], edges[(at + 1) % count]]
}
