//! Elastic, cord or filling is passed into a casing or a cover.
//!
//! ## How to write it
//! Name what goes in and where: the hemmed edges that are the casing, a strip that is sewn on, or the cover. A
//! hem leaves a gap for it (`leave`), which is closed afterwards.
//!
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   elastic: {kind: elastic, name: Elastic, width: 1 cm (3/8 in), length: 20 cm (7 7/8 in)}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 9 cm]}, allowance: {all: seam, top: 2 cm}, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.left, tab.left], allowance: seam, stitch: 2.5 mm}
//! - {sew: [strap.right, tab.right], allowance: seam, stitch: 2.5 mm}
//! - {hem: strap.top, allowance: 2 cm (3/4 in), stitch: 2.5 mm, leave: 5 cm (2 in)}
//! - insert: [elastic, strap.top]
//! - {close: strap.top, stitch: 2.5 mm}
//! ```
//!
//! Hem the top edge, leave a gap, pass the elastic through and close the gap.
//! ````
//!
//! ## What it needs
//! The casing is sewn, and open: at a gap, or at an end that is not sewn yet. Elastic and tape are narrower than
//! their casing, and say how long they are.
//!
//! ## What it changes
//! Nothing of the state.

use std::collections::BTreeSet;

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::{Fault, Moment, Shut};
use crate::construct::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Insert, include_str!("insert.rs"), insert);

fn insert(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let casing = edges(&deed.targets);
    let wholes: BTreeSet<CopyId> = deed.targets.iter().filter_map(whole).collect();
    let within = wholes.iter().flat_map(|copy| player.edition.edges_of(*copy).into_iter().map(|edge| (*copy, edge)));
    let within: Vec<(CopyId, EdgeId)> = casing.iter().copied().chain(within).collect();
    player.passed.extend(within);
    let unmade = casing.iter().find(|(copy, edge)| !player.state.is_dealt_with(*copy, *edge));
    let why = match unmade {
        Some((copy, edge)) => Some(Shut::NoCasing(player.edition.edge_name(*copy, *edge))),
        None if casing.is_empty() && wholes.is_empty() => None,
        None => shut(player, &casing, &wholes),
    };
    if let Some(why) = why {
        player.faults.push(Fault::CasingShut { inserted: deed.moment, why });
    }
}

fn whole(target: &Touched) -> Option<CopyId> {
    match target {
        Touched::Copy(copy) => Some(*copy),
        _ => None,
    }
}

/// Why nothing passes into these edges and pieces; `None` where one of them is open.
fn shut(player: &Player<'_>, casing: &[(CopyId, EdgeId)], wholes: &BTreeSet<CopyId>) -> Option<Shut> {
    let gap = |member: &(CopyId, EdgeId)| casing.contains(member) || wholes.contains(&member.0);
    let mut closed: Option<Moment> = None;
    for hem in player.state.hem_gaps.iter().filter(|hem| hem.edges.iter().any(gap)) {
        match hem.closed {
            None => return None,
            Some(moment) => closed = Some(moment),
        }
    }
    let held = |member: &Touched| matches!(member, Touched::Edge(copy, edge) if gap(&(*copy, *edge)));
    for seam in player.state.seams.iter().filter(|seam| seam.members.iter().any(held)) {
        match seam.gap {
            Some(None) => return None,
            Some(Some(moment)) => closed = Some(moment),
            None => {}
        }
    }
    let ends = casing.iter().any(|(copy, edge)| ends(player, *copy, *edge));
    let (copies, notions) = player.state.held_with(wholes);
    let free = |copy: &CopyId| player.edition.edges_of(*copy).into_iter().any(|edge| is_free(player, *copy, edge));
    let zip = player.state.zip_edges.keys().any(|(notion, _)| notions.contains(notion));
    (!ends && !zip && !copies.iter().any(free)).then_some(Shut::Sewn(closed))
}

/// Whether an edge beside this one is not sewn, so that the casing is open at its end.
fn ends(player: &Player<'_>, copy: CopyId, edge: EdgeId) -> bool {
    let edges = player.edition.edges_of(copy);
    let Some(at) = edges.iter().position(|one| *one == edge) else { return false };
    let beside = [(at + 1) % edges.len(), (at + edges.len() - 1) % edges.len()];
    beside.into_iter().any(|at| is_free(player, copy, edges[at]))
}

fn is_free(player: &Player<'_>, copy: CopyId, edge: EdgeId) -> bool {
    !player.state.is_sewn(copy, edge)
}
