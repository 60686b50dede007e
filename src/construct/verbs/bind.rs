//! An edge is enclosed in a strip.
//!
//! ## How to write it
//! Name the edges and, if it is a notion or a piece of its own, the strip. The stitch length belongs to it.
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
//! - {bind: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! ```
//!
//! Bind the long edges.
//! ````
//!
//! ## What it needs
//! The allowance, where it is stated, is the one that the piece has; an edge that is cut without one (`top: 0 cm`) is bound
//! at any. A strip that is named whole beside the edges, as in `bind: [front.left, back.left, strip]`, is as long as what it
//! binds, once the seams that join its ends are taken off, and what is turned in (`ends: in`). The two edges of one seam
//! count once, and so do quilted layers, what was basted as one, and what was pinned or put on each other; else name edges that
//! lie on each other as one: `bind: [[front.top, lining_front.top], strip]`. A seam is sewn before it is bound. A strip may be
//! sewn on first, `sew: [front.top, strip.bottom]`, and bound over in a later fact.
//!
//! ## What it changes
//! The edge is finished, and no longer raw. It keeps its place: a binding takes nothing off the size.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::{Player, edges};
use crate::construct::slits;
use crate::construct::state::BOUND;
use crate::construct::strips;
use crate::model::Verb;
use crate::resolve::Touched;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Bind, include_str!("bind.rs"), bind);

fn bind(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    slits::neaten(player, deed, false);
    slits::check_strip(player, deed);
    player.check_allowance(deed.work, &edges(&deed.targets), deed.moment);
    player.check_places(deed);
    strips::bind(player, deed);
    let named = edges(&deed.all);
    let inside = deed.targets.iter().any(|target| matches!(target, Touched::Inside(..)));
    for (copy, edge) in player.edges_of(&deed.all) {
        let share = player.shares(deed, copy, edge);
        // A strip that is named whole binds, and is not bound.
        let bound = named.contains(&(copy, edge)) || (named.is_empty() && !inside);
        let word = if bound { BOUND } else { "sewn on as a binding" };
        player.finish_edge((copy, edge), share, word, deed.moment);
    }
}
