//! What was sewn right sides together and never turned out: gaps that nothing was turned through, and parts that are
//! caught wrong side out.

use std::collections::BTreeSet;

use super::deed::Deed;
use super::fault::{Fault, Moment};
use super::player::{Player, edges};
use super::state::Seam;
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Touched};

/// Tells every gap that was left, and closed, and that nothing was turned through.
pub(super) fn judge(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for seam in &player.state.seams {
        let Some(Some(closed)) = seam.gap else { continue };
        let of: BTreeSet<CopyId> = edges(&seam.members).into_iter().map(|(copy, _)| copy).collect();
        let through = |(turned, copies): &(Moment, BTreeSet<CopyId>)| {
            seam.sewn < *turned && *turned < closed && !copies.is_disjoint(&of)
        };
        if seam.leave_for.is_none() && is_inside_out(player, seam) && !player.turns.iter().any(through) {
            let edges = edges(&seam.members).into_iter().map(|(copy, edge)| player.edition.edge_name(copy, edge));
            faults.push(Fault::NeverTurned { edges: edges.collect(), sewn: seam.sewn, at: closed });
        }
    }
    player.faults.extend(faults);
}

/// Whether a seam leaves its allowances outside until it is turned: sewn by machine between two layers of which
/// neither is meant to stay raw, and nothing was passed into it.
fn is_inside_out(player: &Player<'_>, seam: &Seam) -> bool {
    let held = edges(&seam.members);
    let Some(work) = Moment::work_of(player.edition, seam.sewn) else { return false };
    let outside = work.work.words.iter().any(|words| words.text.contains("wrong side"));
    let passed = player.passed.iter().any(|edge| held.contains(edge));
    let raw = held.iter().any(|(copy, edge)| player.is_declared_raw(*copy, *edge));
    work.verb == Verb::Sew && !work.work.by_hand && !outside && !passed && !raw && held.len() > 1
}

impl Player<'_> {
    /// Parts that are caught while they are wrong side out: sewn to one other all round but for the edge that is
    /// caught, and not turned.
    pub fn check_turned(&mut self, deed: &Deed<'_, '_>, caught: &[Touched]) {
        let caught = edges(caught);
        let found = caught.iter().find_map(|(copy, edge)| {
            let sewn = self.sewn_all_round(*copy, &caught)?;
            let turned = self.state.copies[*copy].turned.is_some();
            (!turned).then(|| (self.edition.edge_name(*copy, *edge), sewn))
        });
        if let Some((edge, sewn)) = found {
            self.faults.push(Fault::NeverTurned { edges: vec![edge], sewn, at: deed.moment });
        }
    }

    /// The last seam between a copy and one other that runs along all of its edges but some.
    fn sewn_all_round(&self, copy: CopyId, but: &[(CopyId, EdgeId)]) -> Option<Moment> {
        let mut partner = None;
        let mut last = None;
        for edge in self.edition.edges_of(copy).into_iter().filter(|edge| !but.contains(&(copy, *edge))) {
            let seam = self.state.seams.get(*self.state.known_edge(copy, edge)?.seams.first()?)?;
            let others: BTreeSet<CopyId> = seam.members.iter().filter_map(Touched::copy).collect();
            let other = others.iter().copied().find(|other| *other != copy)?;
            if others.len() != 2 || !is_inside_out(self, seam) || *partner.get_or_insert(other) != other {
                return None;
            }
            last = last.max(Some(seam.sewn));
        }
        last
    }
}
