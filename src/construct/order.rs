//! Work that comes too early or too late for what it belongs to: pins after the stitches, a mark after what it was for,
//! a strap over an edge that is still to be hemmed, scissors before the seam or after the turn.

use std::collections::BTreeSet;

use super::fault::Fault;
use super::log::Logged;
use super::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, Touched, ZipEdge};

/// What is out of its order in one fact, by its place in the log.
pub(super) fn misplaced(player: &Player<'_>, at: usize) -> Option<Fault> {
    let logged = &player.logged[at];
    let (before, later) = (&player.logged[..at], &player.logged[at + 1..]);
    match logged.verb {
        Verb::Pin => pinned(player, logged, before, later),
        Verb::Attach => hemmed_over(player, logged, later),
        Verb::Mark => marked(player, logged, before),
        Verb::Trim => zip_cut(player, logged).or_else(|| turned(player, logged)),
        _ => None,
    }
}

/// Whole pieces that are stitched to each other before, and never again.
fn pinned(player: &Player<'_>, pin: &Logged, before: &[Logged], later: &[Logged]) -> Option<Fault> {
    let pins = pin.whole();
    if pins.len() < 2 || !edges(&pin.named).is_empty() {
        return None;
    }
    let holds = |logged: &&Logged| pins.iter().filter(|copy| logged.holds(**copy)).count() > 1;
    let earlier = before.iter().filter(|logged| logged.verb.lasts() && logged.verb.stitches()).find(holds)?;
    let mut again =
        later.iter().filter(|logged| logged.verb.stitches() || matches!(logged.verb, Verb::Attach | Verb::Close));
    if again.any(|logged| holds(&logged)) {
        return None;
    }
    let mut names =
        pins.iter().filter(|copy| earlier.holds(**copy)).map(|copy| player.edition.cast[*copy].name.clone());
    let edges = (names.next()?, names.next()?);
    Some(Fault::PinnedTooLate { edges, pinned: pin.moment, sewn: earlier.moment })
}

/// A thing that is sewn on over an edge which is hemmed or bound later.
fn hemmed_over(player: &Player<'_>, attach: &Logged, later: &[Logged]) -> Option<Fault> {
    edges(&attach.named).into_iter().find_map(|of| {
        let hem = later
            .iter()
            .find(|logged| matches!(logged.verb, Verb::Hem | Verb::Bind) && edges(&logged.named).contains(&of))?;
        let edge = player.edition.edge_name(of.0, of.1);
        Some(Fault::HemmedOver { edge, attached: attach.moment, hemmed: hem.moment })
    })
}

/// A mark that something was stitched to before it was made, and that no fact made before.
fn marked(player: &Player<'_>, mark: &Logged, before: &[Logged]) -> Option<Fault> {
    mark.named.iter().find_map(|target| {
        let Touched::Inside(copy, inside) = target else { return None };
        let uses = |logged: &&Logged| logged.named.contains(target);
        if before.iter().filter(uses).any(|logged| logged.verb == Verb::Mark) {
            return None;
        }
        let used = before.iter().filter(|logged| logged.verb.stitches() || logged.verb == Verb::Attach).find(uses)?;
        let name = player.edition.inside_name(*copy, *inside);
        Some(Fault::MarkedTooLate { name, marked: mark.moment, used: used.moment })
    })
}

/// A zip that is cut to its length after an end of it is sewn in.
fn zip_cut(player: &Player<'_>, trim: &Logged) -> Option<Fault> {
    trim.named.iter().find_map(|target| {
        let Touched::Notion(notion) = target else { return None };
        let ends = [ZipEdge::Start, ZipEdge::End].into_iter();
        let seams = ends.flat_map(|end| Some((end, player.state.zip_edges.get(&(*notion, end))?.first()?)));
        let sewn = seams.filter_map(|(end, seam)| Some((end, player.state.seams.get(*seam)?.sewn)));
        let (end, earlier) = sewn.into_iter().find(|(_, sewn)| *sewn < trim.moment)?;
        let edge = format!("{}.{}", player.edition.draft.facts.notions[*notion].id.text, end.word());
        Some(Fault::PreparedTooLate { edge, done: trim.moment, earlier })
    })
}

/// Whole pieces that are trimmed at their seams after the thing was turned right side out.
fn turned(player: &Player<'_>, trim: &Logged) -> Option<Fault> {
    let copies: BTreeSet<CopyId> = trim.whole();
    if copies.len() < 2 {
        return None;
    }
    let all = |held: &BTreeSet<CopyId>| copies.iter().all(|copy| held.contains(copy));
    let mut turns = player.turns.iter().filter(|(moment, held)| *moment < trim.moment && all(held));
    let (turned, _) = turns.next().filter(|_| turns.next().is_none())?;
    let seam = player.state.seams.iter().filter(|seam| seam.sewn < *turned);
    let held = seam.map(|seam| seam.members.iter().filter_map(Touched::copy).collect::<BTreeSet<_>>());
    held.into_iter().find(|held| all(held))?;
    let verb = Verb::Trim;
    let edge = player.edition.cast[*copies.first()?].name.clone();
    Some(Fault::TurnedTooSoon { verb, edge, done: trim.moment, turned: *turned })
}
