//! Seams that were forgotten though their edges were finished: of two seams that are each other's mirror image one
//! is sewn.

use std::collections::BTreeSet;

use super::fault::Fault;
use super::player::{Player, edges};
use crate::resolve::{CopyId, EdgeId};

/// An edge of a copy.
type Of = (CopyId, EdgeId);

/// Tells each pair of edges that hang free, where their like are sewn to each other.
pub(super) fn judge(player: &mut Player<'_>) {
    let free: Vec<Of> = player.state.edges.keys().copied().filter(|of| hangs_free(player, *of)).collect();
    let mut told: BTreeSet<Of> = BTreeSet::new();
    for one in &free {
        if told.contains(one) {
            continue;
        }
        let Some((like, partner, other)) = sewn_like(player, *one, &free) else { continue };
        told.extend([*one, other]);
        let name = |of: Of| player.edition.edge_name(of.0, of.1);
        let known = player.state.known_edge(one.0, one.1).and_then(|known| known.neat);
        let seam = player.state.known_edge(like.0, like.1).and_then(|known| known.seams.first().copied());
        let (Some(finished), Some(seam)) = (known, seam) else { continue };
        let sewn = player.state.seams[seam].sewn;
        let (edges, like) = ((name(*one), name(other)), (name(like), name(partner)));
        player.faults.push(Fault::SeamForgotten { edges, like, finished, sewn });
    }
}

/// Whether an edge was kept from fraying, and nothing else became of it.
fn hangs_free(player: &Player<'_>, (copy, edge): Of) -> bool {
    let known = player.state.known_edge(copy, edge).filter(|known| known.neat.is_some());
    let free = known.is_some_and(|known| {
        known.seams.is_empty()
            && known.finished.is_none()
            && known.folded.is_none()
            && known.topstitched.is_none()
            && known.covered.is_empty()
    });
    free && !player.is_declared_raw(copy, edge)
}

/// The like of an edge, what that is sewn to, and the like of this that hangs free as well.
fn sewn_like(player: &Player<'_>, one: Of, free: &[Of]) -> Option<(Of, Of, Of)> {
    twins(player, one).into_iter().find_map(|like| {
        let known = player.state.known_edge(like.0, like.1)?;
        let members = known.seams.iter().flat_map(|seam| edges(&player.state.seams[*seam].members));
        let others: Vec<Of> = members.filter(|other| *other != like && *other != one).collect();
        others.into_iter().find_map(|partner| {
            let found = twins(player, partner).into_iter().find(|twin| *twin != one && free.contains(twin))?;
            Some((like, partner, found))
        })
    })
}

/// The same edge of the other half of a piece cut on the fold, and of copies of the same cloth.
pub(super) fn twins(player: &Player<'_>, (copy, edge): Of) -> Vec<Of> {
    let own = &player.edition.cast[copy];
    let drawn = player.edition.drawn_word(copy, edge);
    let halves = player.edition.edges_of(copy).into_iter();
    let half = halves.filter(|other| *other != edge && player.edition.drawn_word(copy, *other) == drawn);
    let others = player.edition.cast.of_piece(own.piece);
    let others = others.filter(|other| *other != copy && player.edition.cast[*other].fabric == own.fabric);
    half.map(|other| (copy, other)).chain(others.map(|other| (other, edge))).collect()
}
