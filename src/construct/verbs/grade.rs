//! The allowances of a seam are cut to different widths, so that they make no ridge.
//!
//! ## How to write it
//! Name the edges that the seam holds.
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
//! - grade: [strap.top, tab.top]
//! ```
//!
//! Sew the long edge, and grade its allowances.
//! ````
//!
//! ## What it needs
//! The seam is sewn.
//!
//! ## What it changes
//! The seam can be turned without a ridge, round a curve too.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Grade, include_str!("grade.rs"), grade);

fn grade(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.check_not_turned(deed);
    for seam in player.seams_worked_on(deed) {
        player.state.seams[seam].eased = true;
    }
}
