//! Whether a shut zip shuts the work: which layers hang at it, and whether they are open elsewhere.

use std::collections::BTreeSet;

use super::player::{Player, edges};
use super::state::Seam;
use crate::resolve::{CopyId, EdgeId, Filler, NotionId, Touched};

/// Whether one of the layers at a zip, such as the outside or the lining of a bag, is open nowhere but there.
pub(super) fn shuts(player: &Player<'_>, zip: NotionId) -> bool {
    let at_zip = |seam: &Seam| {
        let tape =
            |member: &Touched| matches!(member, Touched::ZipEdge(notion, edge) if *notion == zip && edge.is_tape());
        seam.members.iter().any(tape)
    };
    let (sewn_in, others): (Vec<&Seam>, Vec<&Seam>) = player.state.seams.iter().partition(|seam| at_zip(seam));
    let tapes: BTreeSet<(CopyId, EdgeId)> = sewn_in.iter().flat_map(|seam| edges(&seam.members)).collect();
    let mut left: BTreeSet<CopyId> = tapes.iter().map(|(copy, _)| *copy).collect();
    while let Some(first) = left.pop_first() {
        let layer = layer(&others, first);
        left.retain(|copy| !layer.contains(copy));
        if !is_open(player, &layer, &tapes, &others, zip) {
            return true;
        }
    }
    false
}

/// The copies that seams hold together with one.
fn layer(seams: &[&Seam], first: CopyId) -> BTreeSet<CopyId> {
    let mut layer = BTreeSet::from([first]);
    loop {
        let held = seams.iter().map(|seam| copies(seam)).filter(|copies| !copies.is_disjoint(&layer));
        let more: BTreeSet<CopyId> = held.flatten().collect();
        if more.is_subset(&layer) {
            return layer;
        }
        layer.extend(more);
    }
}

fn copies(seam: &Seam) -> BTreeSet<CopyId> {
    edges(&seam.members).into_iter().map(|(copy, _)| copy).collect()
}

fn is_open(
    player: &Player<'_>,
    layer: &BTreeSet<CopyId>,
    tapes: &BTreeSet<(CopyId, EdgeId)>,
    others: &[&Seam],
    zip: NotionId,
) -> bool {
    let of = |seam: &&&Seam| !copies(seam).is_disjoint(layer);
    let gap = |seam: &&Seam| seam.gap == Some(None) && seam.leave_for != Some(Filler::Notion(zip));
    if others.iter().filter(of).any(gap) || player.has_slit(layer.iter()) {
        return true;
    }
    // What lies between two others, such as a pocket caught in the side seams, opens nothing.
    let caught = |copy: CopyId| {
        let mut own = others.iter().filter(|seam| copies(seam).contains(&copy)).peekable();
        own.peek().is_some() && own.all(|seam| copies(seam).len() > 2)
    };
    layer.iter().filter(|copy| !caught(**copy)).any(|copy| {
        let free = |edge: &EdgeId| player.stands_open(*copy, *edge) && !tapes.contains(&(*copy, *edge));
        player.edition.edges_of(*copy).iter().any(free)
    })
}
