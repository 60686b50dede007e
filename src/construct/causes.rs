//! Why an edge is raw at the end: the step in which it was missed, where one can be told.

use super::fault::{Cause, Moment, RawOf};
use super::forgotten::twins;
use super::player::{Player, edges};
use super::state::{EdgeState, Seam};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, NotionId, ZipEdge};

/// An edge of a copy.
type Of = (CopyId, EdgeId);

/// What stays raw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Raw {
    Edge(CopyId, EdgeId),
    Tape(NotionId, ZipEdge),
}

/// The step in which an edge was missed: another of its piece was sewn twice, its like was sewn, it was laid there to be
/// sewn; `None` where no step is the cause.
pub(super) fn cause(player: &Player<'_>, raw: Raw) -> Option<(Cause, Moment)> {
    match raw {
        Raw::Tape(notion, tape) => other_tape(player, notion, tape),
        Raw::Edge(copy, edge) => {
            let of = (copy, edge);
            let part = || stitched_early(player, of).or_else(|| in_part(player, of));
            let missed = || part().or_else(|| sewn_twice(player, of)).or_else(|| like(player, of));
            missed().or_else(|| laid_there(player, of))
        }
    }
}

/// The last work on the copy of an edge: somewhere near it, or before, something is missing.
pub(super) fn last_work(player: &Player<'_>, copy: CopyId) -> Option<Moment> {
    let works = player.logged.iter().rev();
    let mut works = works.filter(|logged| shapes(logged.verb) && logged.holds(copy));
    works.next().map(|logged| logged.moment)
}

/// Whether a verb does something to an edge for good.
fn shapes(verb: Verb) -> bool {
    verb.lasts() || matches!(verb, Verb::Fold | Verb::Hem | Verb::Bind)
}

/// The other tape of a zip in its last seam, where that stands in several.
fn other_tape(player: &Player<'_>, notion: NotionId, tape: ZipEdge) -> Option<(Cause, Moment)> {
    let other = if tape == ZipEdge::TapeA { ZipEdge::TapeB } else { ZipEdge::TapeA };
    let seams = player.state.zip_edges.get(&(notion, other))?;
    let sewn = player.state.seams.get(*seams.last().filter(|_| seams.len() > 1)?)?.sewn;
    let name = format!("{}.{}", player.edition.draft.facts.notions[notion].id.text, other.word());
    Some((Cause::SewnTwice(name), sewn))
}

/// The row of stitches that was to hold its fold.
fn stitched_early(player: &Player<'_>, (copy, edge): Of) -> Option<(Cause, Moment)> {
    let state = player.state.known_edge(copy, edge)?;
    let stitched = state.topstitched.filter(|stitched| state.folded.is_some_and(|folded| *stitched < folded))?;
    Some((Cause::StitchedEarly, stitched))
}

/// The seam that holds only a part of it.
fn in_part(player: &Player<'_>, (copy, edge): Of) -> Option<(Cause, Moment)> {
    let seam = player.state.known_edge(copy, edge)?.seams.last()?;
    Some((Cause::InPart, player.state.seams.get(*seam)?.sewn))
}

/// Another edge of the same piece that stands in two seams from end to end.
fn sewn_twice(player: &Player<'_>, (copy, _): Of) -> Option<(Cause, Moment)> {
    let piece = player.edition.cast[copy].piece;
    let fabric = player.edition.cast[copy].fabric;
    let own = player.state.edges.iter().filter(|((other, _), state)| {
        let member = &player.edition.cast[*other];
        (member.piece, member.fabric) == (piece, fabric) && state.seams.len() > 1 && state.is_held_whole()
    });
    let told = own.filter_map(|((other, edge), state)| {
        let later = player.state.seams.get(*state.seams.last()?)?;
        Some((Cause::SewnTwice(player.edition.edge_name(*other, *edge)), later.sewn))
    });
    told.max_by_key(|(_, moment)| *moment)
}

/// Its like, the other half or another copy of its piece, and when that was sewn or finished.
fn like(player: &Player<'_>, of: Of) -> Option<(Cause, Moment)> {
    let done = |twin: &Of| {
        let state = player.state.known_edge(twin.0, twin.1)?;
        // One that is raw itself is no example.
        if state.seams.is_empty() && !player.state.is_settled(twin.0, twin.1) {
            return None;
        }
        let moment = mirrored(player, *twin, of).or_else(|| settled(player, state))?;
        Some((Cause::LikeSewn(player.edition.edge_name(twin.0, twin.1)), moment))
    };
    twins(player, of).iter().find_map(done)
}

/// The seam of the likes of what the like of an edge is sewn to: where that was sewn left, what is sewn right.
fn mirrored(player: &Player<'_>, like: Of, of: Of) -> Option<Moment> {
    let seams = &player.state.seams;
    let own = *player.state.known_edge(like.0, like.1)?.seams.last()?;
    let members = edges(&seams.get(own)?.members);
    let others: Vec<Of> =
        members.iter().filter(|other| **other != like).flat_map(|other| twins(player, *other)).collect();
    let holds = |seam: &Seam| edges(&seam.members).iter().any(|held| *held != of && others.contains(held));
    let mut found = seams.iter().enumerate().filter(|(at, seam)| *at != own && holds(seam));
    found.next().map(|(_, seam)| seam.sewn)
}

/// When an edge was sewn, finished or stitched.
fn settled(player: &Player<'_>, state: &EdgeState) -> Option<Moment> {
    let seam = state.seams.last().and_then(|seam| player.state.seams.get(*seam)).map(|seam| seam.sewn);
    seam.or(state.finished.map(|(moment, _)| moment)).or(state.topstitched).or(state.neat)
}

/// The seam for which it was pinned, in which something else of the pinned was sewn.
fn laid_there(player: &Player<'_>, of: Of) -> Option<(Cause, Moment)> {
    let at = player.logged.iter().rposition(|logged| logged.verb == Verb::Pin && logged.meets(of))?;
    let pin = &player.logged[at];
    let seam = player.logged[at..]
        .iter()
        .find(|logged| logged.verb.lasts() && pin.copies().iter().any(|copy| *copy != of.0 && logged.holds(*copy)))?;
    (!seam.meets(of)).then_some((Cause::Pinned(pin.moment.verb), seam.moment))
}

/// What the raw things of one cause are to a reader: the piece, or the zip.
pub(super) fn owner(player: &Player<'_>, raw: Raw) -> RawOf {
    match raw {
        Raw::Edge(copy, _) => RawOf::Piece(player.edition.cast[copy].piece),
        Raw::Tape(notion, _) => RawOf::Zip(notion),
    }
}

/// As authors write it.
pub(super) fn name(player: &Player<'_>, raw: Raw) -> String {
    match raw {
        Raw::Edge(copy, edge) => player.edition.edge_name(copy, edge),
        Raw::Tape(notion, tape) => {
            format!("{}.{}", player.edition.draft.facts.notions[notion].id.text, tape.word())
        }
    }
}
