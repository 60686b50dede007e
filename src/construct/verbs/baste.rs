//! Layers are held with long stitches until they are sewn, or for good.
//!
//! ## How to write it
//! Name the edges or the pieces. The stitch length belongs to it; `allowance` is the distance from the edge. With
//! `as one` behind the names the layers count as one from here on: the name of one means all.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: [left, right, bottom], cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {baste: [strap, tab, as one], allowance: 5 mm (3/16 in), stitch: 4 mm}
//! - {hem: strap.top, allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Baste the strap and the tab together all round, and hem the long edge of both.
//! ````
//!
//! ## What it needs
//! The pieces are cut. Layers that are to count as one have edges of the same names and lengths, or one is as wide as the
//! other and clearly lower, as a pocket on its panel, and is one with it along all edges that are not hemmed before; where edges are
//! named, as in `baste: [front.waist, lining.waist, as one]`, they are one along these alone.
//!
//! ## What it changes
//! The edges are still raw. The next lasting stitch over one of them catches what is basted to it; of layers as
//! one, what is done to an edge of one layer is done to all. Two edges of one piece, such as the long edges of a band
//! that is folded in half, are one edge once they are basted or sewn to each other.

use std::collections::BTreeSet;

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::lengths::TOLERANCE;
use crate::construct::player::{Player, edges};
use crate::construct::state::Layers;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Baste, include_str!("baste.rs"), baste);

fn baste(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.hold_to_itself(deed);
    if !deed.work.work.as_one {
        player.baste(deed);
        return;
    }
    let copies: BTreeSet<CopyId> = deed.touched.clone();
    let edges: BTreeSet<(CopyId, EdgeId)> = edges(&deed.targets).into_iter().collect();
    match edges.is_empty() {
        true if lies_level(player, &copies) => {
            level(player, &copies);
            return;
        }
        true => differ(player, &copies, deed),
        false => {
            player.check_lengths(deed);
        }
    }
    player.state.layers.push(Layers { copies, edges });
}

/// How much lower than the other a piece is that is meant to be, in mm (common practice, no source).
const LOWER: f64 = 20.0;

/// The edges of two copies that are called alike, and how much they differ in mm.
fn pairs(player: &Player<'_>, copies: &BTreeSet<CopyId>) -> Vec<([(CopyId, EdgeId); 2], f64)> {
    let [one, other] = copies.iter().copied().collect::<Vec<_>>()[..] else { return Vec::new() };
    let pair = |edge: EdgeId| {
        let same = player.edge_called(other, &player.edition.edge_word(one, edge))?;
        let lengths = [(one, edge), (other, same)].map(|of| player.drawn_length(&[of]));
        Some(([(one, edge), (other, same)], (lengths[0] - lengths[1]).abs()))
    };
    player.edition.edges_of(one).into_iter().filter_map(pair).collect()
}

/// Whether one of two copies is as wide as the other and clearly lower, such as a pocket on its panel.
fn lies_level(player: &Player<'_>, copies: &BTreeSet<CopyId>) -> bool {
    let pairs = pairs(player, copies);
    let low = pairs.iter().filter(|(_, apart)| *apart >= LOWER).count();
    pairs.len() == 4 && low == 2 && pairs.iter().filter(|(_, apart)| *apart <= TOLERANCE).count() == 2
}

/// A lower piece is one with the other along the edges that are free still.
fn level(player: &mut Player<'_>, copies: &BTreeSet<CopyId>) {
    for (pair, _) in pairs(player, copies) {
        if !pair.iter().any(|(copy, edge)| player.state.is_dealt_with(*copy, *edge)) {
            player.state.layers.push(Layers { copies: copies.clone(), edges: pair.into_iter().collect() });
        }
    }
}

/// Layers that count as one have edges of one length where these are called the same.
fn differ(player: &mut Player<'_>, layers: &BTreeSet<CopyId>, deed: &Deed<'_, '_>) {
    let mut copies = layers.iter().copied();
    let Some(first) = copies.next() else { return };
    for other in copies {
        for edge in player.edition.edges_of(first) {
            let word = player.edition.edge_word(first, edge);
            let Some(same) = player.edge_called(other, &word) else { continue };
            let (one, two) = (player.drawn_length(&[(first, edge)]), player.drawn_length(&[(other, same)]));
            if (one - two).abs() > TOLERANCE {
                let pieces = (player.edition.cast[first].piece, player.edition.cast[other].piece);
                player.faults.push(Fault::LengthsDiffer {
                    pieces: (pieces.0.min(pieces.1), pieces.0.max(pieces.1)),
                    first: (player.edition.edge_name(first, edge), one),
                    second: (player.edition.edge_name(other, same), two),
                    eased: 0.0,
                    both: None,
                    sewn: deed.moment,
                });
                return;
            }
        }
    }
}
