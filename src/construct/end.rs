//! What must be true when the last step is done.

use super::causes::{self, Raw};
use super::fault::{Cause, Fault, Moment, RawOf, Unreckoned};
use super::forgotten;
use super::looked_back;
use super::outside;
use super::player::Player;
use super::sewn;
use super::slits;
use super::strips;
use super::unfinished;
use super::unturned;
use super::zips;
use crate::resolve::{CopyId, Filler, NotionId, Touched, ZipEdge};

/// Judges the finished thing: gaps, raw edges, finished measurements.
pub(super) fn judge(player: &mut Player<'_>) {
    gaps(player);
    idle(player);
    player.never_caught();
    player.caught_too_short();
    player.never_closed();
    strips::judge(player);
    unfinished::judge(player);
    forgotten::judge(player);
    unturned::judge(player);
    looked_back::judge(player);
    holes(player);
    slits::judge(player);
    ends_of_zips(player);
    zips::judge(player);
    outside::judge(player);
    // A seam whose other side has no name leaves an edge raw that is meant to be sewn.
    let unknown = player.faults.iter().any(|fault| matches!(fault, Fault::NoSuchEdge { .. }))
        || player.state.seams.iter().any(|seam| seam.members.contains(&Touched::Unknown));
    if !unknown {
        raw_edges(player);
    }
    // A seam at another allowance than it was cut for makes another size: that follows.
    if !player.faults.iter().any(|fault| matches!(fault, Fault::AllowanceDiffers { .. })) {
        let faults = sewn::compare(player.edition, &player.state);
        let raw = player.faults.iter().any(|fault| matches!(fault, Fault::EdgesRaw { .. })) || unknown;
        // An edge that stays raw is told by itself.
        let follows = |fault: &Fault| match fault {
            Fault::SewnNotReckoned { why: Unreckoned::Open(_), .. } => raw,
            Fault::SewnNotReckoned { why: Unreckoned::Follows, .. } => true,
            _ => false,
        };
        player.faults.extend(faults.into_iter().filter(|fault| !follows(fault)));
    }
}

/// Copies that are cut and lie there to the end; a piece of which no copy is used is told where it is described.
fn idle(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for (copy, member) in player.edition.cast.copies() {
        let state = &player.state.copies[copy];
        // A name that stands for several things is told by itself.
        let facts = &player.edition.draft.facts;
        let other = |(id, one): (CopyId, &crate::resolve::Member)| id != copy && one.named && one.name == member.name;
        if player.edition.cast.copies().any(other) || facts.fabrics.iter().any(|one| one.id.text == member.name) {
            continue;
        }
        let fellow = |other: CopyId| other != copy && player.state.copies[other].used;
        let Some(cut) = state.cut.filter(|_| !state.used && player.edition.cast.of_piece(member.piece).any(fellow))
        else {
            continue;
        };
        faults.push(Fault::CopyIdle { copy: member.name.clone(), piece: member.piece, cut });
    }
    player.faults.extend(faults);
}

fn gaps(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for seam in &player.state.seams {
        let (Some(None), Some(leave)) = (seam.gap, seam.leave) else { continue };
        let edges = seam
            .members
            .iter()
            .filter_map(|member| match member {
                Touched::Edge(copy, edge) => Some(player.edition.edge_name(*copy, *edge)),
                _ => None,
            })
            .collect();
        let filler = match seam.leave_for {
            Some(Filler::Notion(notion)) => Some(notion),
            _ => None,
        };
        faults.push(Fault::GapOpen { edges, sewn: seam.sewn, leave, filler });
    }
    for hem in player.state.hem_gaps.iter().filter(|hem| hem.closed.is_none()) {
        let edges = hem.edges.iter().map(|(copy, edge)| player.edition.edge_name(*copy, *edge)).collect();
        faults.push(Fault::GapOpen { edges, sewn: hem.sewn, leave: hem.leave, filler: None });
    }
    player.faults.extend(faults);
}

/// A hole goes through every layer that its edge has in the end.
fn holes(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for ((copy, edge), state) in &player.state.edges {
        let Some(holed) = state.holed else { continue };
        let seams = state.seams.iter().filter_map(|seam| player.state.seams.get(*seam)).map(|seam| seam.sewn);
        let finished = state.finished.map(|(moment, _)| moment);
        if let Some(sewn) = seams.chain(finished).filter(|sewn| *sewn > holed).min() {
            faults.push(Fault::HoleTooSoon { edge: player.edition.edge_name(*copy, *edge), holed, sewn });
        }
    }
    player.faults.extend(faults);
}

/// What one step missed: why, and when.
type Missed = (Option<(Cause, Moment)>, Vec<Raw>);

/// One seam that was forgotten leaves two edges raw: all that one step left so are one fault, and so are all that no
/// step can be blamed for.
fn raw_edges(player: &mut Player<'_>) {
    let mut raw: Vec<Raw> = Vec::new();
    for (copy, _) in player.edition.cast.copies() {
        let state = &player.state.copies[copy];
        // Layers move with the piece that they are held to; what is only cut is another check's.
        if !state.handled || state.cut.is_none() {
            continue;
        }
        for edge in player.edition.edges_of(copy) {
            let settled = player.state.is_settled(copy, edge) || player.is_declared_raw(copy, edge);
            if !settled && !player.hangs_loose(copy, edge) {
                raw.push(Raw::Edge(copy, edge));
            }
        }
    }
    raw.extend(loose_tapes(player).into_iter().map(|(notion, tape)| Raw::Tape(notion, tape)));
    let mut groups: Vec<Missed> = Vec::new();
    for one in raw {
        let cause = causes::cause(player, one);
        let when = cause.as_ref().map(|(_, moment)| *moment);
        match groups.iter_mut().find(|(known, _)| known.as_ref().map(|(_, moment)| *moment) == when) {
            Some((_, group)) => group.push(one),
            None => groups.push((cause, vec![one])),
        }
    }
    for (cause, group) in groups {
        let last = || {
            let works = group.iter().filter_map(|one| match one {
                Raw::Edge(copy, _) => causes::last_work(player, *copy),
                Raw::Tape(..) => None,
            });
            works.max().map(|moment| (Cause::LastWork, moment))
        };
        let cause = cause.or_else(last);
        let edges: Vec<(RawOf, String)> =
            group.iter().map(|one| (causes::owner(player, *one), causes::name(player, *one))).collect();
        player.faults.push(Fault::EdgesRaw { edges, cause });
    }
}

/// Zips of which one tape is sewn in and the other is not.
fn loose_tapes(player: &Player<'_>) -> Vec<(NotionId, ZipEdge)> {
    let sewn = |notion: NotionId, tape: ZipEdge| player.state.zip_edges.contains_key(&(notion, tape));
    NotionId::each(&player.edition.draft.facts.notions)
        .filter_map(|(notion, _)| match (sewn(notion, ZipEdge::TapeA), sewn(notion, ZipEdge::TapeB)) {
            (true, false) => Some((notion, ZipEdge::TapeB)),
            (false, true) => Some((notion, ZipEdge::TapeA)),
            _ => None,
        })
        .collect()
}

/// Zips of which one end is sewn twice, and the other never.
fn ends_of_zips(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for (notion, facts) in NotionId::each(&player.edition.draft.facts.notions) {
        let seams = |end: ZipEdge| player.state.zip_edges.get(&(notion, end)).map_or(&[][..], Vec::as_slice);
        for (twice, never) in [(ZipEdge::Start, ZipEdge::End), (ZipEdge::End, ZipEdge::Start)] {
            let again = seams(twice).get(1).and_then(|seam| player.state.seams.get(*seam));
            if let Some(again) = again.filter(|_| seams(never).is_empty()) {
                let name = |end: ZipEdge| format!("{}.{}", facts.id.text, end.word());
                faults.push(Fault::EndTwice { twice: name(twice), never: name(never), again: again.sewn });
            }
        }
    }
    player.faults.extend(faults);
}
