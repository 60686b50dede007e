//! Layers are stitched together all over.
//!
//! ## How to write it
//! Name the layers. A stitch length belongs to it; `gap` says how far apart the lines are.
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
//! - {quilt: [strap, layer], stitch: 3 mm, gap: 2 cm (3/4 in)}
//! ```
//!
//! Quilt the layer to the strap in a grid.
//! ````
//!
//! ## What it needs
//! The layers are cut.
//!
//! ## What it changes
//! The layers move as one from here on: what is done to an edge of one is done to the same edge of all that have its
//! length, and what is basted to one is caught when any of them is. Cloth that is made of the piece (`from:` in the facts) can now be cut. The thread for quilting comes on top of what is reckoned.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::layers;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Quilt, include_str!("quilt.rs"), quilt);

fn quilt(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    layers::lay(player, deed);
    layers::stack(player, deed);
    for copy in &deed.touched {
        let state = &mut player.state.copies[*copy];
        state.quilted.get_or_insert(deed.moment);
        state.worked.get_or_insert(deed.moment);
    }
}
