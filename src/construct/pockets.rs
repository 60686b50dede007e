//! Things that are stitched onto a piece while it still lies flat.

use std::collections::{BTreeMap, BTreeSet};

use super::fault::{Fault, Moment};
use super::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// What is stitched with two edges or more onto a piece whose sides are closed to a tube by then.
pub(super) fn on_tubes(player: &Player<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let stitched = player.logged.iter().filter(|logged| matches!(logged.verb, Verb::Topstitch | Verb::Edgestitch));
    for logged in stitched {
        let own: BTreeSet<CopyId> = edges(&logged.named).into_iter().map(|(copy, _)| copy).collect();
        let at_mark = logged.named.iter().filter(|target| matches!(target, Touched::Inside(..)));
        let whole: BTreeSet<CopyId> = logged.whole().into_iter().chain(at_mark.filter_map(Touched::copy)).collect();
        let (Some(thing), Some(ground), 1) = (own.first(), whole.first().copied(), whole.len()) else { continue };
        if own.len() > 1 || edges(&logged.named).len() < 2 || *thing == ground {
            continue;
        }
        if let Some(sewn) = closed(player, ground).filter(|sewn| *sewn < logged.moment) {
            let name = |copy: CopyId| player.edition.cast[copy].name.clone();
            let (name, ground) = (name(*thing), name(ground));
            faults.push(Fault::OnTube { name, ground, stitched: logged.moment, sewn });
        }
    }
    faults
}

/// When the last of two opposite edges of a piece was sewn to one other, so that both are a tube.
fn closed(player: &Player<'_>, ground: CopyId) -> Option<Moment> {
    let round = player.edition.edges_of(ground);
    let place = |edge: EdgeId| round.iter().position(|known| *known == edge);
    let mut with: BTreeMap<CopyId, Vec<(EdgeId, Moment)>> = BTreeMap::new();
    for seam in &player.state.seams {
        let held = edges(&seam.members);
        for (_, edge) in held.iter().filter(|(copy, _)| *copy == ground) {
            for (other, _) in held.iter().filter(|(copy, _)| *copy != ground) {
                with.entry(*other).or_default().push((*edge, seam.sewn));
            }
        }
    }
    let apart = |one: EdgeId, two: EdgeId| {
        let (Some(one), Some(two)) = (place(one), place(two)) else { return false };
        let apart = one.abs_diff(two);
        apart > 1 && apart + 1 < round.len()
    };
    let tubes = with.values().filter_map(|seams| {
        let pairs = seams.iter().flat_map(|one| seams.iter().map(move |two| (one, two)));
        let opposite = pairs.filter(|(one, two)| one.1 < two.1 && apart(one.0, two.0));
        opposite.map(|(_, two)| two.1).min()
    });
    tubes.min()
}
