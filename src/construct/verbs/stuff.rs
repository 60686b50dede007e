//! A body is filled with stuffing.
//!
//! ## How to write it
//! Name the filling and one of the pieces of what is filled. `attach` and `close` come afterwards.
//!
//! ```yaml
//! sizes: {small: {name: Small, wearer: child}, large: {name: Large, wearer: child}}
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   filling: {kind: filling, name: Toy stuffing, amount: 100 g}
//! pieces:
//!   body_front: {outline: {rectangle: [20 cm, 30 cm]}, allowance: seam, cut: {outer: 1}}
//!   body_back: {outline: {rectangle: [20 cm, 30 cm]}, allowance: seam, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the body {#body}
//!
//! ```work
//! - cut: [body_front, body_back]
//! - {sew: [body_front, body_back], allowance: seam, stitch: 2 mm, leave: 8 cm (3 1/8 in)}
//! - turn: [body_front, right side out]
//! - stuff: [filling, body_front, firmly packed]
//! - {close: body_front, by: hand}
//! ```
//!
//! Sew all round, leave a gap, turn the body out, stuff it firmly and close the gap by hand.
//!
//! > [!CAUTION]
//! > A child can swallow what comes out of a seam: sew each one twice.
//! ````
//!
//! ## What it needs
//! The body is sewn and turned, and something is open to fill it through: a gap, an edge that no seam holds, or a
//! zip.
//!
//! ## What it changes
//! The body is full: it can no longer be turned.

use super::entry::VerbEntry;
use super::turn::{closed_end, has_opening, held};
use crate::construct::deed::Deed;
use crate::construct::fault::{Fault, Unfilled};
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Stuff, include_str!("stuff.rs"), stuff);

fn stuff(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let (copies, notions) = player.state.held_with(&deed.touched);
    let seams = || player.state.seams.iter().filter(|seam| seam.members.iter().any(|member| held(member, &copies)));
    let why = if seams().next().is_none() && !deed.touched.is_empty() {
        Some(Unfilled::Unsewn)
    } else if !has_opening(player, &copies, &notions) {
        let closed = seams().find_map(|seam| seam.gap.flatten());
        Some(Unfilled::Shut(closed.or_else(|| closed_end(player, &copies))))
    } else {
        None
    };
    player.faults.extend(why.map(|why| Fault::StuffedOutOfOrder { stuffed: deed.moment, why }));
    for copy in copies {
        player.state.copies[copy].stuffed.get_or_insert(deed.moment);
    }
}
