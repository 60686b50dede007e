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
use super::turn::CLOSED;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;
use crate::resolve::Touched;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Close, include_str!("close.rs"), close);

fn close(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
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
