//! Pins, and the seam that follows them: what is pinned to each other is what is sewn.

use super::fault::Fault;
use super::log::Logged;
use super::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId};

/// An edge of a copy.
type Of = (CopyId, EdgeId);

/// What is pinned is what is sewn: the next seam of either holds both.
pub(super) fn pinned(player: &Player<'_>, pin: &Logged, later: &[Logged]) -> Option<Fault> {
    match edges(&pin.named).as_slice() {
        [one, two] if one.0 != two.0 && pin.named.len() == 2 => pair(player, pin, (*one, *two), later),
        [] => pile(player, pin, later),
        [of] => onto(player, pin, *of, later),
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
    let instead = edges(&seam.named).into_iter().find(|of| *of != own);
    let cloth = |of: Of| player.edition.cast[of.0].fabric;
    let alike = cloth(own) == cloth(other) && instead.is_some_and(|instead| cloth(instead) != cloth(own));
    let name = |(copy, edge): Of| player.edition.edge_name(copy, edge);
    let (pinned, instead) = ((name(own), name(other)), instead.map(name));
    Some(Fault::PinnedOtherwise { pinned, at: pin.moment, instead, sewn: seam.moment, alike })
}

fn sews(work: &Logged, of: Of) -> bool {
    work.verb == Verb::Sew && work.meets(of)
}

/// Whole pieces that are pinned to an edge, and the work that holds them to another edge of the same piece.
fn onto(player: &Player<'_>, pin: &Logged, (ground, edge): Of, later: &[Logged]) -> Option<Fault> {
    let things = pin.whole();
    let holds = |logged: &&Logged| logged.verb.lasts() && things.iter().all(|thing| logged.whole().contains(thing));
    let work = later.iter().find(holds).filter(|_| !things.is_empty() && !things.contains(&ground))?;
    let named = edges(&work.named);
    let (copy, instead) = *named.iter().find(|(copy, _)| *copy == ground)?;
    if named.contains(&(ground, edge)) || work.whole().contains(&ground) {
        return None;
    }
    let own = player.edition.cast[*things.first()?].name.clone();
    let pinned = (own, player.edition.edge_name(ground, edge));
    let instead = Some(player.edition.edge_name(copy, instead));
    Some(Fault::PinnedOtherwise { pinned, at: pin.moment, instead, sewn: work.moment, alike: false })
}

/// Whole pieces that lie on each other, and the seam of whole pieces that follows.
fn pile(player: &Player<'_>, pin: &Logged, later: &[Logged]) -> Option<Fault> {
    let pins = pin.whole();
    let seam = later.iter().find(|logged| logged.verb.lasts() && pins.iter().any(|copy| logged.holds(*copy)))?;
    if pins.len() < 2 || seam.verb != Verb::Sew || !edges(&seam.named).is_empty() {
        return None;
    }
    let name = |copy: &CopyId| player.edition.cast[*copy].name.clone();
    let extra = not_pinned(player, pin, seam);
    let joined = |copy: CopyId| {
        let with = |logged: &Logged| pins.iter().any(|other| *other != copy && logged.holds(*other));
        later.iter().any(|logged| logged.verb.lasts() && logged.holds(copy) && with(logged))
    };
    if let Some(out) = pins.iter().find(|copy| !seam.holds(**copy) && !joined(**copy)) {
        let own = pins.iter().find(|copy| seam.holds(**copy))?;
        let (pinned, instead) = ((name(own), name(out)), extra.first().map(name));
        return Some(Fault::PinnedOtherwise { pinned, at: pin.moment, instead, sewn: seam.moment, alike: false });
    }
    let names: Vec<String> = extra.iter().map(name).collect();
    (!names.is_empty()).then_some(Fault::NotPinned { names, pinned: pin.moment, sewn: seam.moment })
}

/// What a seam sews along with what is pinned, and that no pins, and no stitches or glue before, hold to it.
fn not_pinned(player: &Player<'_>, pin: &Logged, seam: &Logged) -> Vec<CopyId> {
    let pins = pin.whole();
    let before = || player.logged.iter().filter(|logged| logged.moment < seam.moment);
    let joins =
        |verb: Verb| matches!(verb, Verb::Sew | Verb::Baste | Verb::Fuse | Verb::Quilt | Verb::Attach | Verb::Lap);
    let held = |copy: CopyId| {
        let with =
            |logged: &Logged| logged.holds(copy) && pins.iter().any(|other| *other != copy && logged.holds(*other));
        before().any(|logged| (joins(logged.verb) && with(logged)) || (logged.verb == Verb::Pin && logged.holds(copy)))
    };
    seam.whole().into_iter().filter(|copy| !pins.contains(copy) && !held(*copy)).collect()
}
