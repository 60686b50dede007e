//! A layer is stuck to a piece with the iron.
//!
//! ## How to write it
//! Name the layer and the piece that it is fused to; for a drawing, the lowest first.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   layer: {outline: {rectangle: [28 cm, 3 cm]}, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, layer]
//! - fuse: [strap, layer]
//! ```
//!
//! Fuse the layer to the wrong side of the strap.
//! ````
//!
//! ## What it needs
//! The pieces lie flat: none of them is sewn, quilted or folded yet.
//!
//! ## What it changes
//! The pieces move as one from here on, and the edges of a fused layer need no finish.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::fault::Fault;
use crate::construct::layers;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Fuse, include_str!("fuse.rs"), fuse);

fn fuse(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    layers::lay(player, deed);
    let stuck = layers::stacks(player, deed);
    player.state.stuck.extend(stuck);
    for copy in &deed.touched {
        let state = &mut player.state.copies[*copy];
        // What is quilted together was fused for it before: only the fusing can come too late.
        if let Some(earlier) = state.worked {
            let copy = player.edition.cast[*copy].name.clone();
            player.faults.push(Fault::FusedTooLate { copy, fused: deed.moment, earlier });
        }
    }
}
