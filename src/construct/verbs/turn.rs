//! Something is turned, right side out or wrong side out.
//!
//! ## How to write it
//! Name one of its pieces; say which way in words behind.
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
//! - {sew: [strap, tab], allowance: seam, stitch: 2.5 mm, leave: 6 cm (2 3/8 in)}
//! - turn: [strap, right side out]
//! - close: strap
//!   by: hand
//! ```
//!
//! Sew all round, turn the strap out through the gap, and close it.
//! ````
//!
//! ## What it needs
//! Something is open to turn through: a gap, an edge that no seam holds, or a zip with one layer at each tape.
//! Its zips are open. A piece that no seam holds yet is turned over, and needs nothing.
//!
//! ## What it changes
//! The pieces that hang together are no longer flat.

use std::collections::BTreeSet;

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::player::Player;
use crate::model::Verb;
use crate::resolve::{CopyId, NotionId, Touched};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Turn, include_str!("turn.rs"), turn);

/// Something is turned: it must be open somewhere, and its zips must be open.
fn turn(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let moment = deed.moment;
    let (copies, notions) = player.state.held_with(&deed.touched);
    for notion in &notions {
        let is_zip = player.state.zip_edges.keys().any(|(known, edge)| known == notion && edge.is_tape());
        if is_zip && !player.state.open_zips.contains(notion) {
            player.faults.push(Fault::ZipShut { notion: *notion, turned: moment });
        }
    }
    // A piece that no seam holds yet is turned over, not turned out.
    let sewn = player.state.seams.iter().any(|seam| seam.members.iter().any(|member| held(member, &copies)));
    if sewn && !has_opening(player, &copies, &notions) {
        let seams = player.state.seams.iter();
        let closed = seams
            .filter(|seam| seam.members.iter().any(|member| held(member, &copies)))
            .find_map(|seam| seam.gap.flatten());
        player.faults.push(Fault::NothingOpen { turned: moment, closed });
    }
    for copy in copies {
        player.state.copies[copy].turned.get_or_insert(moment);
    }
}

fn has_opening(player: &Player<'_>, copies: &BTreeSet<CopyId>, notions: &BTreeSet<NotionId>) -> bool {
    let state = &player.state;
    let gap = state
        .seams
        .iter()
        .any(|seam| matches!(seam.gap, Some(None)) && seam.members.iter().any(|member| held(member, copies)));
    let edge = copies.iter().any(|copy| {
        player
            .edition
            .edges_of(*copy)
            .into_iter()
            .any(|edge| !state.is_sewn(*copy, edge) && !player.is_declared_raw(*copy, edge))
    });
    // A zip opens the thing only where no lining closes it: one layer at each tape.
    let zip = notions.iter().any(|notion| {
        let tapes: Vec<usize> = state
            .zip_edges
            .iter()
            .filter(|((known, edge), _)| known == notion && edge.is_tape())
            .flat_map(|(_, seams)| seams.iter().copied())
            .collect();
        let single = |seam: &usize| {
            let members = &state.seams[*seam].members;
            members.iter().filter(|member| matches!(member, Touched::Edge(..))).count() == 1
        };
        state.open_zips.contains(notion) && !tapes.is_empty() && tapes.iter().all(single)
    });
    gap || edge || zip
}

fn held(member: &Touched, copies: &BTreeSet<CopyId>) -> bool {
    matches!(member, Touched::Edge(copy, _) | Touched::Copy(copy) if copies.contains(copy))
}
