//! Seams with the wrong sides together: their allowances lie outside until something takes them in.

use super::fault::{Fault, Moment};
use super::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId};

/// Finds the seams sewn with the wrong sides together whose raw allowances show to the end.
pub(super) fn judge(player: &mut Player<'_>) {
    let mut faults = Vec::new();
    for (at, seam) in player.state.seams.iter().enumerate() {
        let Some(work) = Moment::work_of(player.edition, seam.sewn) else { continue };
        if work.verb != Verb::Sew || !work.work.wrong_sides || seam.turned_in.is_some() {
            continue;
        }
        let shows = |(copy, edge): &(CopyId, EdgeId)| {
            !player.is_declared_raw(*copy, *edge) && !taken_in(player, *copy, *edge, at, seam.sewn)
        };
        let raw: Vec<String> = edges(&seam.members)
            .iter()
            .filter(|of| shows(of))
            .map(|(copy, edge)| player.edition.edge_name(*copy, *edge))
            .collect();
        if !raw.is_empty() {
            faults.push(Fault::ShowsOutside { edges: raw, sewn: seam.sewn });
        }
    }
    player.faults.extend(faults);
}

/// Whether an allowance is bound, finished, felled or sewn in again, or the work was turned.
fn taken_in(player: &Player<'_>, copy: CopyId, edge: EdgeId, seam: usize, sewn: Moment) -> bool {
    let turned = player.state.copies[copy].turned.is_some_and(|turned| turned > sewn);
    let later = player.state.known_edge(copy, edge).is_some_and(|known| {
        known.finished.is_some()
            || known.neat.is_some()
            || known.folded.is_some_and(|folded| folded > sewn)
            || known.topstitched.is_some_and(|stitched| stitched > sewn)
            || known.seams.iter().any(|other| *other > seam)
    });
    turned || later
}
