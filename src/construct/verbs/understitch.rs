//! The allowances of a seam are stitched to the facing, so that it stays inside.
//!
//! ## How to write it
//! Name the edge of the facing. The stitch length belongs to it.
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
//! - {understitch: tab.top, allowance: 2 mm (1/16 in), stitch: 2.5 mm}
//! ```
//!
//! Sew the long edge, press the allowances towards the tab, and understitch them to it.
//! ````
//!
//! ## What it needs
//! The seam is sewn.
//!
//! ## What it changes
//! The allowances are stitched to one side: they count as pressed and graded, and as finished.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Understitch, include_str!("understitch.rs"), understitch);

fn understitch(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.check_not_turned(deed);
    for seam in player.seams_worked_on(deed) {
        player.face(seam, &deed.touched);
        let seam = &mut player.state.seams[seam];
        (seam.pressed, seam.eased, seam.understitched) = (true, true, true);
    }
}
