//! The allowance of a curve or a corner is snipped, up to the seam.
//!
//! ## How to write it
//! Name the edges.
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
//! - {sew: [strap.top, tab.top], allowance: seam, stitch: 2.5 mm}
//! - clip: [strap.top, tab.top]
//! ```
//!
//! Sew the long edge, and clip its allowances.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! A seam can be turned round a curve.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Clip, include_str!("clip.rs"), clip);

fn clip(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.check_not_turned(deed);
    for seam in player.seams_at(&deed.all) {
        player.state.seams[seam].eased = true;
    }
}
