//! A strap is stitched on with a box and a cross in it.
//!
//! ## How to write it
//! Name the end of the strap, and the piece that it is stitched to. The stitch length belongs to it.
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
//! - fold: [strap.left, to the wrong side]
//! - {boxstitch: [strap.left, tab], stitch: 3 mm}
//! ```
//!
//! Fold the end under, and stitch it on with a box and a cross.
//! ````
//!
//! ## What it needs
//! The end lies in its place; a raw end is folded under first.
//!
//! ## What it changes
//! An end that was folded under before is held by the stitches, and no longer raw; one that was not stays raw.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::{Player, edges};
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Boxstitch, include_str!("boxstitch.rs"), boxstitch);

fn boxstitch(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.topstitch(deed);
    // What is stitched on by its end shows that end.
    for (copy, _) in edges(&deed.targets) {
        player.handle(copy, deed.moment);
    }
}
