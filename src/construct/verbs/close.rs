//! The gap that was left in a seam is sewn shut, or a zip is closed.
//!
//! ## How to write it
//! Name the edge with the gap, or the zip. A gap names its `stitch` length, or says `by: hand`.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm, leave: 6 cm (2 3/8 in)}
//! - close: strap.top
//!   by: hand
//! ```
//!
//! Leave a gap in the seam, and close it by hand.
//! ````
//!
//! ## What it needs
//! The edge has a gap, or is an end that no seam holds, such as that of a tube.
//!
//! ## What it changes
//! The gap is closed, or the end turned in and stitched shut: nothing can be turned through it any more.

use super::entry::VerbEntry;
use super::hem::HEMMED;
use super::turn::CLOSED;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::player::{Player, edges};
use crate::construct::state::EdgeState;
use crate::model::Verb;
use crate::resolve::Touched;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Close, include_str!("close.rs"), close);

fn close(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    if let Some(fault) = nothing(player, deed) {
        player.faults.push(fault);
    }
    for target in &deed.targets {
        match target {
            Touched::Notion(notion) | Touched::ZipEdge(notion, _) => {
                player.state.open_zips.remove(notion);
            }
            Touched::Copy(_) => close_gaps(player, target, deed),
            Touched::Edge(copy, edge) => {
                close_gaps(player, target, deed);
                // An end that no seam holds was left open as it was cut: it is turned in and stitched shut.
                if !player.state.is_sewn(*copy, *edge) && !player.state.is_settled(*copy, *edge) {
                    player.finish_edge((*copy, *edge), (0.0, 1.0), CLOSED, deed.moment);
                    player.state.edge(*copy, *edge).covered.push((0.0, 1.0));
                }
            }
            Touched::Inside(..) | Touched::Unknown => {}
        }
    }
}

/// A seam that is closed though it has no gap: nothing else that the fact names is open.
fn nothing(player: &Player<'_>, deed: &Deed<'_, '_>) -> Option<Fault> {
    let state = &player.state;
    let mut shut = None;
    for target in &deed.targets {
        let Touched::Edge(copy, edge) = target else { return None };
        let gap = player.seams_at(&[*target]).into_iter().any(|seam| state.seams[seam].gap.is_some());
        let hem = state.hem_gaps.iter().any(|hem| hem.edges.contains(&(*copy, *edge)));
        let hemmed = |edge: &EdgeState| edge.seams.is_empty() && edge.finished.is_some_and(|(_, how)| how == HEMMED);
        if gap || hem || !state.known_edge(*copy, *edge).is_some_and(|edge| edge.is_held_whole() || hemmed(edge)) {
            return None;
        }
        shut.get_or_insert((*copy, *edge));
    }
    let (copy, edge) = shut?;
    let open = state.seams.iter().filter(|seam| seam.gap == Some(None)).flat_map(|seam| edges(&seam.members));
    let open = open.map(|(copy, edge)| player.edition.edge_name(copy, edge)).next();
    let own = state.known_edge(copy, edge)?;
    let seam = own.seams.last().and_then(|seam| state.seams.get(*seam)).map(|seam| seam.sewn);
    let (sewn, hemmed) = (seam.or(own.finished.map(|(moment, _)| moment))?, seam.is_none());
    // One hemmed edge may be caught down by hand, and what is filled may be closed at its hems.
    let filled = || player.logged.iter().any(|work| matches!(work.verb, Verb::Stuff | Verb::Insert));
    if hemmed && (deed.targets.len() < 2 || filled()) {
        return None;
    }
    Some(Fault::NothingToClose { edge: player.edition.edge_name(copy, edge), closed: deed.moment, open, sewn, hemmed })
}

fn close_gaps(player: &mut Player<'_>, target: &Touched, deed: &Deed<'_, '_>) {
    for hem in &mut player.state.hem_gaps {
        let holds = hem.edges.iter().any(|(copy, edge)| match target {
            Touched::Copy(wanted) => copy == wanted,
            target => *target == Touched::Edge(*copy, *edge),
        });
        if holds {
            hem.closed.get_or_insert(deed.moment);
        }
    }
    for seam in &mut player.state.seams {
        let holds = seam.members.iter().any(|member| match (member, target) {
            (Touched::Edge(copy, _), Touched::Copy(wanted)) => copy == wanted,
            (member, target) => member == target,
        });
        // An opening for a notion is closed by sewing that in.
        if holds && seam.leave_for.is_none() && seam.gap == Some(None) {
            seam.gap = Some(Some(deed.moment));
        }
    }
}
