//! What only shows when all is done and one looks back: a layer that went to two pieces, buttons where the holes are, cloth cut away before its seam.

use super::fault::Fault;
use super::log::Logged;
use super::order;
use super::pins;
use super::player::{Player, edges};
use super::pockets;
use crate::model::Verb;
use crate::resolve::{CopyId, FabricId, Touched};

/// Looks back over all work.
pub(super) fn judge(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for (at, logged) in player.logged.iter().enumerate() {
        let later = &player.logged[at + 1..];
        match logged.verb {
            Verb::Pin => faults.extend(pins::pinned(player, logged, later)),
            Verb::Fuse => faults.extend(fused(player, logged, later)),
            Verb::Button | Verb::Fasten => faults.extend(holed(player, logged)),
            Verb::Trim => faults.extend(trimmed(player, at)),
            _ => {}
        }
        match logged.verb {
            Verb::Pin | Verb::Attach | Verb::Mark | Verb::Trim => faults.extend(order::misplaced(player, at)),
            _ => {}
        }
    }
    faults.extend(pockets::on_tubes(player));
    player.faults.extend(faults);
}

/// A layer has its glue on one side: what is sewn nowhere is fused to one thing.
fn fused(player: &Player<'_>, first: &Logged, later: &[Logged]) -> Option<Fault> {
    let is_sewn = |fabric: Option<FabricId>| {
        let copies = player.edition.cast.copies().filter(|(_, member)| member.fabric == fabric);
        copies.into_iter().any(|(copy, _)| player.state.copies[copy].handled)
    };
    let fabric = |copy: CopyId| player.edition.cast[copy].fabric;
    for again in later.iter().filter(|logged| logged.verb == Verb::Fuse) {
        for layer in first.copies().intersection(&again.copies()) {
            let other = |logged: &Logged| logged.copies().into_iter().find(|copy| copy != layer);
            let (Some(one), Some(two)) = (other(first), other(again)) else { continue };
            let apart = one != two && fabric(one) != fabric(*layer) && fabric(two) != fabric(*layer);
            if apart && !is_sewn(fabric(*layer)) && is_sewn(fabric(one)) && is_sewn(fabric(two)) {
                let name = |copy: CopyId| player.edition.cast[copy].name.clone();
                let to = (name(one), name(two));
                return Some(Fault::FusedToTwo { layer: name(*layer), to, first: first.moment, again: again.moment });
            }
        }
    }
    None
}

/// Buttons lie over the holes of the other side.
fn holed(player: &Player<'_>, buttons: &Logged) -> Option<Fault> {
    let row = |target: &&Touched| matches!(target, Touched::Inside(..) | Touched::Edge(..));
    // Holes on both sides are more than there are buttons, which is told by itself.
    let holes = |target: &Touched| {
        let mut works = player.logged.iter().filter(|logged| logged.verb == Verb::Buttonhole);
        let only = |logged: &&Logged| logged.named.iter().all(|row| buttons.named.contains(row));
        works.find(|logged| logged.named.contains(target) && only(logged)).map(|logged| logged.moment)
    };
    let (target, holed) = buttons.named.iter().filter(row).find_map(|target| Some((target, holes(target)?)))?;
    let name = match target {
        Touched::Inside(copy, inside) => player.edition.inside_name(*copy, *inside),
        Touched::Edge(copy, edge) => player.edition.edge_name(*copy, *edge),
        _ => return None,
    };
    Some(Fault::HolesUnderButtons { name, holed, buttoned: buttons.moment })
}

/// An allowance that is cut away before its seam is sewn; what was quilted, or counts as one with a layer, is trimmed to
/// its size.
fn trimmed(player: &Player<'_>, at: usize) -> Option<Fault> {
    let trim = &player.logged[at];
    let before = &player.logged[..at];
    edges(&trim.named).into_iter().find_map(|(copy, edge)| {
        let sized = before.iter().any(|logged| matches!(logged.verb, Verb::Quilt | Verb::Fuse) && logged.holds(copy));
        let worked = before.iter().any(|logged| logged.verb.stitches() && logged.meets((copy, edge)));
        let sewn = player.sewn_later(copy, edge, trim.moment).filter(|_| !sized && !worked)?;
        let edge = player.edition.edge_name(copy, edge);
        Some(Fault::SeamNotSewnYet { edge, done: trim.moment, sewn: Some(sewn) })
    })
}
