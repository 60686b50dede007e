//! Allowances that stay raw inside, where the booklet asks that every edge is finished.

use super::fault::Fault;
use super::player::Player;
use super::state::Seam;
use crate::resolve::{CopyId, EdgeId, Touched};

/// Tells every seam with a raw allowance that nothing encloses.
pub(super) fn judge(player: &mut Player<'_>) {
    if !player.edition.draft.facts.finishing_required {
        return;
    }
    let mut faults = Vec::new();
    for seam in player.state.seams.iter().filter(|seam| !is_enclosed(player, seam)) {
        let raw = held(seam).filter(|(copy, edge)| {
            let known = player.state.known_edge(*copy, *edge);
            let neat = known.is_some_and(|known| known.neat.is_some() || known.finished.is_some());
            !neat && !player.is_declared_raw(*copy, *edge)
        });
        let edges: Vec<String> = raw.map(|(copy, edge)| player.edition.edge_name(copy, edge)).collect();
        if !edges.is_empty() {
            faults.push(Fault::NotFinished { edges, sewn: seam.sewn });
        }
    }
    player.faults.extend(faults);
}

fn held(seam: &Seam) -> impl Iterator<Item = (CopyId, EdgeId)> {
    seam.members.iter().filter_map(|member| match member {
        Touched::Edge(copy, edge) => Some((*copy, *edge)),
        _ => None,
    })
}

/// Whether layers lie over the allowances, as far as the steps tell: what was turned through a gap, a
/// facing that was turned or understitched, a third layer, a band that was folded over.
fn is_enclosed(player: &Player<'_>, seam: &Seam) -> bool {
    let folded = held(seam).any(|(copy, _)| player.state.copies[copy].folded_up.is_some());
    seam.turned_in || seam.understitched || held(seam).count() > 2 || folded
}
