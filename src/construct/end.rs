//! Turning out, and what must be true when the last step is done.

use std::collections::BTreeSet;

use super::cast::Target;
use super::fault::{Fault, Moment};
use super::play::Player;
use super::sewn;

impl Player<'_> {
    /// Something is turned: it must be open somewhere, and its zips must be open.
    pub(super) fn turn(&mut self, touched: &BTreeSet<usize>, moment: Moment) {
        let (copies, notions) = self.state.held_with(touched);
        for notion in &notions {
            let is_zip =
                self.state.notion_edges.keys().any(|(known, edge)| known == notion && edge.starts_with("tape"));
            if is_zip && !self.state.open_zips.contains(notion) {
                self.faults.push(Fault::ZipShut { notion: *notion, turned: moment });
            }
        }
        // A piece that no seam holds yet is turned over, not turned out.
        let sewn = self.state.seams.iter().any(|seam| seam.members.iter().any(|member| held(member, &copies)));
        if sewn && !self.has_opening(&copies, &notions) {
            let closed = self
                .state
                .seams
                .iter()
                .filter(|seam| seam.members.iter().any(|member| held(member, &copies)))
                .find_map(|seam| seam.gap.flatten());
            self.faults.push(Fault::NothingOpen { turned: moment, closed });
        }
        for copy in copies {
            self.state.copies[copy].turned.get_or_insert(moment);
        }
    }

    fn has_opening(&self, copies: &BTreeSet<usize>, notions: &BTreeSet<usize>) -> bool {
        let gap = self
            .state
            .seams
            .iter()
            .any(|seam| matches!(seam.gap, Some(None)) && seam.members.iter().any(|member| held(member, copies)));
        let edge = copies.iter().any(|copy| {
            self.edges_of(&[Target::Copy(*copy)]).iter().any(|(copy, edge)| {
                !self.state.is_sewn(*copy, edge) && !self.is_declared_raw(*copy, edge) && !self.is_fold(*copy, edge)
            })
        });
        // A zip opens the thing only where no lining closes it: one layer at each tape.
        let zip = notions.iter().any(|notion| {
            let tapes: Vec<usize> = self
                .state
                .notion_edges
                .iter()
                .filter(|((known, edge), _)| known == notion && edge.starts_with("tape"))
                .flat_map(|(_, seams)| seams.iter().copied())
                .collect();
            let single = |seam: &usize| {
                let members = &self.state.seams[*seam].members;
                members.iter().filter(|member| matches!(member, Target::Edge(..))).count() == 1
            };
            self.state.open_zips.contains(notion) && !tapes.is_empty() && tapes.iter().all(single)
        });
        gap || edge || zip
    }

    fn is_declared_raw(&self, copy: usize, edge: &str) -> bool {
        let piece = &self.edition.draft.facts.pieces[self.cast.members[copy].piece];
        piece.raw.iter().any(|raw| raw.text == edge || raw.text == "all")
    }

    fn is_fold(&self, copy: usize, edge: &str) -> bool {
        let piece = &self.edition.draft.facts.pieces[self.cast.members[copy].piece];
        piece.fold.as_ref().is_some_and(|fold| fold.text == edge)
    }
}

fn held(member: &Target, copies: &BTreeSet<usize>) -> bool {
    matches!(member, Target::Edge(copy, _) | Target::Copy(copy) if copies.contains(copy))
}

/// Judges the finished thing: gaps, raw edges, finished measurements.
pub(super) fn judge(player: &mut Player<'_>) {
    gaps(player);
    // A seam whose other side has no name leaves an edge raw that is meant to be sewn.
    let unknown = player.faults.iter().any(|fault| matches!(fault, Fault::NoSuchEdge { .. }))
        || player.state.seams.iter().any(|seam| seam.members.contains(&Target::Unknown));
    if !unknown {
        raw_edges(player);
    }
    // A seam at another allowance than it was cut for makes another size: that follows.
    if !player.faults.iter().any(|fault| matches!(fault, Fault::AllowanceDiffers { .. })) {
        let faults = sewn::compare(player.edition, &player.state, &player.cast);
        player.faults.extend(faults);
    }
}

fn gaps(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for seam in &player.state.seams {
        let (Some(None), Some(leave)) = (seam.gap, seam.leave) else { continue };
        let edges = seam
            .members
            .iter()
            .filter_map(|member| match member {
                Target::Edge(copy, edge) => Some(player.edge_name(*copy, edge)),
                _ => None,
            })
            .collect();
        faults.push(Fault::GapOpen { edges, sewn: seam.sewn, leave });
    }
    player.faults.extend(faults);
}

/// One seam that was forgotten leaves two edges raw: all of them are one fault.
fn raw_edges(player: &mut Player<'_>) {
    let mut raw: Vec<(usize, String)> = Vec::new();
    for (copy, state) in player.state.copies.iter().enumerate() {
        // Layers move with the piece that they are held to; what is only cut is another check's.
        if !state.handled || state.cut.is_none() {
            continue;
        }
        for (_, edge) in player.edges_of(&[Target::Copy(copy)]) {
            let settled = player.state.is_settled(copy, &edge)
                || player.is_declared_raw(copy, &edge)
                || player.is_fold(copy, &edge);
            if !settled {
                raw.push((player.cast.members[copy].piece, player.edge_name(copy, &edge)));
            }
        }
    }
    for (notion, tape) in loose_tapes(player) {
        let name = format!("{}.{tape}", player.edition.draft.facts.notions[notion].id.text);
        let piece = raw.first().map_or(usize::MAX, |(piece, _)| *piece);
        raw.push((piece, name));
    }
    if !raw.is_empty() {
        let twice = sewn_twice(player);
        player.faults.push(Fault::EdgesRaw { edges: raw, twice });
    }
}

/// Edges that stand in two seams, with the later one: where another edge stays raw, one of the two was
/// perhaps meant for it.
fn sewn_twice(player: &Player<'_>) -> Vec<(String, Moment)> {
    player
        .state
        .edges
        .iter()
        .filter(|(_, edge)| edge.seams.len() > 1)
        .filter_map(|((copy, name), edge)| {
            let later = player.state.seams.get(*edge.seams.last()?)?;
            Some((player.edge_name(*copy, name), later.sewn))
        })
        .collect()
}

/// Zips of which one tape is sewn in and the other is not.
fn loose_tapes(player: &Player<'_>) -> Vec<(usize, &'static str)> {
    let sewn = |notion: usize, tape: &str| player.state.notion_edges.contains_key(&(notion, tape.to_owned()));
    (0..player.edition.draft.facts.notions.len())
        .filter_map(|notion| match (sewn(notion, "tape_a"), sewn(notion, "tape_b")) {
            (true, false) => Some((notion, "tape_b")),
            (false, true) => Some((notion, "tape_a")),
            _ => None,
        })
        .collect()
}
