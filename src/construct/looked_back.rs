//! What only shows when all is done and one looks back: pins that held another pair than the seam, a layer that went to
//! two pieces, buttons where the holes are, cloth cut away before its seam.

use std::collections::BTreeSet;

use super::fault::Fault;
use super::log::Logged;
use super::player::{Player, edges};
use super::pockets;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, FabricId, Touched};

/// An edge of a copy.
type Of = (CopyId, EdgeId);

/// Looks back over all work.
pub(super) fn judge(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for (at, logged) in player.logged.iter().enumerate() {
        let later = &player.logged[at + 1..];
        match logged.verb {
            Verb::Pin => faults.extend(pinned(player, logged, later)),
            Verb::Fuse => faults.extend(fused(player, logged, later)),
            Verb::Button | Verb::Fasten => faults.extend(holed(player, logged)),
            Verb::Trim => faults.extend(trimmed(player, at)),
            _ => {}
        }
    }
    faults.extend(pockets::on_tubes(player));
    player.faults.extend(faults);
}

/// What is pinned is what is sewn: the next seam of either holds both.
fn pinned(player: &Player<'_>, pin: &Logged, later: &[Logged]) -> Option<Fault> {
    match edges(&pin.named).as_slice() {
        [one, two] if one.0 != two.0 && pin.named.len() == 2 => pair(player, pin, (*one, *two), later),
        [] => pile(player, pin, later),
        _ => None,
    }
}

/// Two edges that lie on each other.
fn pair(player: &Player<'_>, pin: &Logged, (one, two): (Of, Of), later: &[Logged]) -> Option<Fault> {
    let joins = |logged: &&Logged| logged.verb.stitches() || logged.verb == Verb::Attach;
    if later.iter().filter(joins).any(|logged| logged.meets(one) && logged.meets(two)) {
        return None;
    }
    let seam = later.iter().find(|logged| logged.verb == Verb::Sew && (logged.meets(one) || logged.meets(two)))?;
    // One that is held already, or that hangs on the other by a seam before, is pinned out of the way.
    if [one, two].iter().any(|of| player.logged.iter().any(|work| work.moment < pin.moment && sews(work, *of))) {
        return None;
    }
    let (own, other) = if seam.meets(one) { (one, two) } else { (two, one) };
    let instead =
        edges(&seam.named).into_iter().find(|of| *of != own).map(|(copy, edge)| player.edition.edge_name(copy, edge));
    let name = |(copy, edge): Of| player.edition.edge_name(copy, edge);
    Some(Fault::PinnedOtherwise { pinned: (name(own), name(other)), at: pin.moment, instead, sewn: seam.moment })
}

fn sews(work: &Logged, of: Of) -> bool {
    work.verb == Verb::Sew && work.meets(of)
}

/// Whole pieces that lie on each other, and the seam of whole pieces that follows.
fn pile(player: &Player<'_>, pin: &Logged, later: &[Logged]) -> Option<Fault> {
    let pins = pin.whole();
    let seam = later.iter().find(|logged| logged.verb.lasts() && pins.iter().any(|copy| logged.holds(*copy)))?;
    if pins.len() < 2 || seam.verb != Verb::Sew || edges(&seam.named).len() > 0 {
        return None;
    }
    let sewn = seam.whole();
    let again: BTreeSet<CopyId> = later
        .iter()
        .filter(|logged| logged.verb == Verb::Pin && logged.moment < seam.moment)
        .flat_map(Logged::copies)
        .collect();
    let held = |copy: &CopyId| {
        let before =
            |logged: &&Logged| logged.moment < seam.moment && logged.verb != Verb::Pin && logged.verb != Verb::Cut;
        let with =
            |logged: &Logged| logged.holds(*copy) && pins.iter().any(|pinned| pinned != copy && logged.holds(*pinned));
        player.logged.iter().filter(before).any(with)
    };
    let extra: Vec<CopyId> =
        sewn.iter().filter(|copy| !pins.contains(copy) && !again.contains(copy) && !held(copy)).copied().collect();
    let left: Vec<CopyId> = pins
        .iter()
        .filter(|copy| {
            !seam.holds(**copy)
                && !later.iter().any(|logged| {
                    logged.verb.lasts()
                        && logged.holds(**copy)
                        && pins.iter().any(|other| other != *copy && logged.holds(*other))
                })
        })
        .copied()
        .collect();
    let name = |copy: &CopyId| player.edition.cast[*copy].name.clone();
    if let Some(out) = left.first() {
        let own = sewn.iter().find(|copy| pins.contains(copy)).or(pins.iter().next())?;
        let instead = extra.first().map(name);
        return Some(Fault::PinnedOtherwise {
            pinned: (name(own), name(out)),
            at: pin.moment,
            instead,
            sewn: seam.moment,
        });
    }
    let names: Vec<String> = extra.iter().map(name).collect();
    (!names.is_empty()).then_some(Fault::NotPinned { names, pinned: pin.moment, sewn: seam.moment })
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
