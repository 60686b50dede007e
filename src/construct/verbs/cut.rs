//! Pieces are cut from their fabrics.
//!
//! ## How to write it
//! Name pieces, or copies of them, or `all`.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Cut the strap and the tab, and sew their long edges.
//! ````
//!
//! ## What it needs
//! Cloth that the maker quilts herself (`from:` in the facts) is quilted in an earlier step.
//!
//! ## What it changes
//! The copies exist from here on: a step that uses one earlier is a finding.

use std::collections::{BTreeMap, BTreeSet};

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::{Fault, Moment};
use crate::construct::player::Player;
use crate::model::Verb;
use crate::resolve::{CopyId, FabricId, PieceId, Touched};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Cut, include_str!("cut.rs"), cut);

fn cut(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let copies = deed.targets.iter().filter_map(|target| match target {
        Touched::Copy(copy) => Some(*copy),
        _ => None,
    });
    let mut unmade: BTreeSet<(PieceId, FabricId)> = BTreeSet::new();
    for copy in copies {
        player.state.copies[copy].cut.get_or_insert(deed.moment);
        let member = &player.edition.cast[copy];
        if let Some(fabric) = member.fabric.filter(|fabric| !is_made(player, *fabric)) {
            unmade.insert((member.piece, fabric));
        }
    }
    for (piece, fabric) in unmade {
        let made = will_be_made(player, fabric);
        player.faults.push(Fault::ClothNotMade { piece, fabric, cut: deed.moment, made });
    }
    late(player, deed.moment);
}

/// Whether a cloth is bought, or the piece that it is made from is quilted.
fn is_made(player: &Player<'_>, fabric: FabricId) -> bool {
    match source_of(player, fabric) {
        None => true,
        Some(piece) => player.edition.cast.of_piece(piece).any(|copy| player.state.copies[copy].quilted.is_some()),
    }
}

fn source_of(player: &Player<'_>, fabric: FabricId) -> Option<PieceId> {
    let facts = &player.edition.draft.facts;
    let from = facts.fabrics[fabric].from.as_ref()?;
    PieceId::each(&facts.pieces).find(|(_, piece)| piece.id.text == from.text).map(|(id, _)| id)
}

/// The step that makes a cloth, looked for in the whole booklet.
fn will_be_made(player: &Player<'_>, fabric: FabricId) -> Option<Moment> {
    let piece = source_of(player, fabric)?;
    let copies: BTreeSet<CopyId> = player.edition.cast.of_piece(piece).collect();
    for step in player.edition.steps() {
        for (at, work) in step.works.iter().enumerate().filter(|(_, work)| work.verb == Verb::Quilt) {
            if work.touched().any(|target| matches!(target, Touched::Copy(copy) if copies.contains(&copy))) {
                return Some(Moment::of(step, at));
            }
        }
    }
    None
}

/// Copies that this cut comes too late for: one fault, at the first use.
fn late(player: &mut Player<'_>, cut: Moment) {
    let copies = &player.state.copies;
    let late: Vec<(CopyId, Moment)> = player
        .early
        .iter()
        .filter(|(copy, _)| copies[**copy].cut == Some(cut))
        .map(|(copy, used)| (*copy, *used))
        .collect();
    player.early.retain(|copy, _| copies[*copy].cut != Some(cut));
    let Some(used) = late.iter().map(|(_, used)| *used).min() else { return };
    let copies = late.iter().map(|(copy, _)| player.edition.cast[*copy].name.clone()).collect();
    player.faults.push(Fault::UsedBeforeCut { copies: unique(copies), used, cut });
}

/// Copies that are used and never cut, though others of their piece are.
pub(in crate::construct) fn uncut(player: &mut Player<'_>) {
    let mut by_piece: BTreeMap<PieceId, Vec<(CopyId, Moment)>> = BTreeMap::new();
    for (copy, used) in std::mem::take(&mut player.early) {
        by_piece.entry(player.edition.cast[copy].piece).or_default().push((copy, used));
    }
    for (piece, missing) in by_piece {
        let cut = player.edition.cast.of_piece(piece).filter_map(|copy| player.state.copies[copy].cut).min();
        let used = missing.iter().map(|(_, used)| *used).min();
        // A piece of which nothing is cut at all is another check's.
        let (Some(cut), Some(used)) = (cut, used) else { continue };
        let missing = unique(missing.iter().map(|(copy, _)| player.edition.cast[*copy].name.clone()).collect());
        player.faults.push(Fault::CutTooFew { missing, piece, cut, used });
    }
}

fn unique(names: Vec<String>) -> Vec<String> {
    let mut seen = BTreeSet::new();
    names.into_iter().filter(|name| seen.insert(name.clone())).collect()
}
