//! Allowances that stay raw inside, where the booklet asks that every edge is finished.

use std::collections::BTreeSet;

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
/// facing that was turned or understitched, and its own seams, a third layer, a band or a yoke that was folded over, two
/// layers that were sewn all round but for the edge at which they are sewn on.
fn is_enclosed(player: &Player<'_>, seam: &Seam) -> bool {
    let folded = held(seam).any(|(copy, _)| player.state.copies[copy].folded_up.is_some());
    let faces = held(seam).count() > 0 && held(seam).all(|(copy, _)| player.state.copies[copy].faces);
    let over = || held(seam).any(|of| player.is_folded_over(of, seam.sewn));
    let turned = seam.turned_in.is_some() || seam.understitched || faces;
    turned || held(seam).count() > 2 || folded || is_in_a_pocket(player, seam) || over()
}

/// Whether a seam lies between two layers such as those of a collar or a cuff, or closes them.
fn is_in_a_pocket(player: &Player<'_>, seam: &Seam) -> bool {
    let own: BTreeSet<CopyId> = held(seam).map(|(copy, _)| copy).collect();
    let partners = |copy: CopyId| -> BTreeSet<CopyId> {
        let shared = player.state.seams.iter().filter(|other| held(other).any(|(with, _)| with == copy));
        shared.flat_map(held).map(|(with, _)| with).filter(|with| *with != copy).collect()
    };
    own.iter().any(|copy| {
        let closes = player.state.copies[*copy].turned.is_some_and(|turned| turned < seam.sewn);
        let mut others = partners(*copy).into_iter();
        others.any(|other| (closes || own == BTreeSet::from([*copy, other])) && are_a_pocket(player, *copy, other))
    })
}

/// Two layers that were sewn to each other, turned, and sewn on, or folded in and held, at the one edge left.
fn are_a_pocket(player: &Player<'_>, one: CopyId, other: CopyId) -> bool {
    [one, other].into_iter().all(|copy| {
        let Some(turned) = player.state.copies[copy].turned else { return false };
        let mut later = 0;
        let settled = player.edition.edges_of(copy).into_iter().all(|edge| {
            let Some(known) = player.state.known_edge(copy, edge) else { return false };
            let Some(seam) = known.seams.first().and_then(|seam| player.state.seams.get(*seam)) else {
                later += 1;
                return known.folded.is_some() && known.held;
            };
            later += usize::from(seam.sewn > turned);
            let holds = |copy: CopyId| held(seam).any(|(with, _)| with == copy);
            seam.sewn > turned || (holds(one) && holds(other))
        });
        settled && later <= 1
    })
}
