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
//! Something is open to turn through: a gap, an edge that no seam holds, a slit, or a zip with one layer at each tape.
//! Its zips are open. A piece that no seam holds yet is turned over, and needs nothing.
//!
//! ## What it changes
//! The pieces that hang together are no longer flat.

use std::collections::BTreeSet;

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::{Fault, Moment, Unfilled};
use crate::construct::lengths::millimetres;
use crate::construct::player::{Player, edges};
use crate::construct::state::Seam;
use crate::construct::zips;
use crate::model::Verb;
use crate::resolve::{CopyId, NotionId, PieceId, Touched};

/// An allowance so narrow, in mm, gives way round a curve (common practice, no source).
const NARROW: f64 = 6.5;

/// The words that tell a bag that is turned from a piece that is turned over.
const OUT: &str = "right side out";

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Turn, include_str!("turn.rs"), turn);

/// Something is turned: it must be open somewhere, and its zips must be open.
fn turn(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let moment = deed.moment;
    let (copies, notions) = player.state.held_with(&deed.touched);
    for notion in &notions {
        let is_zip = player.state.zip_edges.keys().any(|(known, edge)| known == notion && edge.is_tape());
        if is_zip && !player.state.open_zips.contains(notion) && zips::shuts(player, *notion) {
            player.faults.push(Fault::ZipShut { notion: *notion, turned: moment });
        }
    }
    // A piece that no seam holds yet is turned over, not turned out.
    unsewn(player, deed);
    let sewn = player.state.seams.iter().any(|seam| seam.members.iter().any(|member| held(member, &copies)));
    if sewn && !has_opening(player, &copies, &notions) {
        let seams = player.state.seams.iter();
        let closed = seams
            .filter(|seam| seam.members.iter().any(|member| held(member, &copies)))
            .find_map(|seam| seam.gap.flatten())
            .or_else(|| closed_end(player, &copies));
        player.faults.push(Fault::NothingOpen { turned: moment, closed });
    }
    curves(player, deed);
    turn_in(player, deed, &copies);
    // What is full was stuffed too soon, told once.
    if let Some(stuffed) = copies.iter().find_map(|copy| player.state.copies[*copy].stuffed) {
        player.faults.push(Fault::StuffedOutOfOrder { stuffed, why: Unfilled::TurnedLater(moment) });
    }
    for copy in &copies {
        player.state.copies[*copy].turned.get_or_insert(moment);
    }
    player.turns.push((moment, copies));
}

/// What is turned right side out is sewn by then: it would be turned once more after its seams.
fn unsewn(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let out = deed.work.work.words.iter().any(|words| words.text.eq_ignore_ascii_case(OUT));
    let copies = deed.touched.iter().copied().filter(|_| out).collect::<Vec<_>>();
    for copy in copies {
        let targets = [Touched::Copy(copy)];
        let later =
            player.edition.edges_of(copy).into_iter().filter_map(|edge| player.sewn_later(copy, edge, deed.moment));
        if let Some(sewn) = later.min().filter(|_| player.seams_at(&targets).is_empty()) {
            let name = player.edition.cast[copy].name.clone();
            player.faults.push(Fault::TurnedUnsewn { name, turned: deed.moment, sewn });
            return;
        }
    }
}

/// Takes down whose allowances lie between layers from here on: all of what was turned through a gap, and
/// those of a facing that was turned by itself.
fn turn_in(player: &mut Player<'_>, deed: &Deed<'_, '_>, copies: &BTreeSet<CopyId>) {
    let through = |seam: &Seam| seam.gap == Some(None) && seam.members.iter().any(|member| held(member, copies));
    let gap = player.state.seams.iter().any(through);
    let cast = &player.edition.cast;
    let mut faced = Vec::new();
    for (at, seam) in player.state.seams.iter_mut().enumerate() {
        let of: BTreeSet<CopyId> = seam.members.iter().filter_map(copy_of).collect();
        let pieces: BTreeSet<PieceId> = of.iter().map(|copy| cast[*copy].piece).collect();
        let named = of.iter().filter(|copy| deed.touched.contains(copy)).count();
        let facing = pieces.len() > 1 && (1..of.len()).contains(&named);
        if facing || (gap && of.iter().any(|copy| copies.contains(copy))) {
            seam.turned_in.get_or_insert(deed.moment);
        }
        if facing {
            faced.push(at);
        }
    }
    faced.into_iter().for_each(|seam| player.face(seam, &deed.touched));
}

/// Tight inward curves whose allowances nobody cut, each told once.
fn curves(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for at in player.seams_at(&deed.touched.iter().map(|copy| Touched::Copy(*copy)).collect::<Vec<_>>()) {
        let seam = &player.state.seams[at];
        let edges = edges(&seam.members);
        let wide = Moment::work_of(player.edition, seam.sewn)
            .filter(|work| work.verb == Verb::Sew)
            .and_then(|work| millimetres(work.allowance))
            .is_some_and(|allowance| allowance > NARROW);
        let hollow = edges.len() > 1 && edges.iter().all(|(copy, edge)| player.is_tight_hollow(*copy, *edge));
        if seam.eased || !wide || !hollow {
            continue;
        }
        let sewn = seam.sewn;
        let edges = edges.iter().map(|(copy, edge)| player.edition.edge_name(*copy, *edge)).collect();
        player.state.seams[at].eased = true;
        player.faults.push(Fault::CurveNotClipped { edges, sewn, turned: deed.moment });
    }
}

fn copy_of(member: &Touched) -> Option<CopyId> {
    match member {
        Touched::Edge(copy, _) | Touched::Copy(copy) => Some(*copy),
        _ => None,
    }
}

/// When an end of one of these copies was turned in and stitched shut.
pub(super) fn closed_end(player: &Player<'_>, copies: &BTreeSet<CopyId>) -> Option<Moment> {
    let own = player.state.edges.iter().filter(|((copy, _), _)| copies.contains(copy));
    own.filter_map(|(_, edge)| edge.finished).find(|(_, word)| *word == CLOSED).map(|(moment, _)| moment)
}

/// The word for an end that was turned in and stitched shut.
pub(super) const CLOSED: &str = "closed";

/// Whether something is open to pass the work or its filling through.
pub(super) fn has_opening(player: &Player<'_>, copies: &BTreeSet<CopyId>, notions: &BTreeSet<NotionId>) -> bool {
    let state = &player.state;
    let gap = state
        .seams
        .iter()
        .any(|seam| matches!(seam.gap, Some(None)) && seam.members.iter().any(|member| held(member, copies)));
    let edge = copies
        .iter()
        .any(|copy| player.edition.edges_of(*copy).into_iter().any(|edge| player.stands_open(*copy, edge)));
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
    gap || edge || zip || player.has_slit(copies.iter())
}

/// Whether a seam's member belongs to these copies.
pub(super) fn held(member: &Touched, copies: &BTreeSet<CopyId>) -> bool {
    matches!(member, Touched::Edge(copy, _) | Touched::Copy(copy) if copies.contains(copy))
}
