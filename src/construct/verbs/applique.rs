//! A shape is stitched onto a piece along its own edge.
//!
//! ## How to write it
//! Name the shape first, then the piece; `appliqué` is read as well. The stitch length belongs to it.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   patch: {outline: {rectangle: [3 cm, 3 cm]}, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [patch, strap]
//! - {applique: [patch, strap], stitch: 1 mm}
//! ```
//!
//! Stitch the patch onto the strap all round, close and wide.
//! ````
//!
//! ## What it needs
//! The shape is cut without allowances, or they are folded under.
//!
//! ## What it changes
//! The stitches cover all edges of the shape: they are no longer raw.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Applique, include_str!("applique.rs"), applique);

fn applique(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    if let Some(shape) = deed.targets.first() {
        player.finish(&[*shape], "stitched on", deed.moment);
    }
}
