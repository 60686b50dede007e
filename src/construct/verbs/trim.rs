//! Cloth is cut away: a seam is cut narrower, a piece to its size.
//!
//! ## How to write it
//! Name edges or pieces; `allowance` is what stays.
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
//! - {trim: [strap.top, tab.top], allowance: 5 mm (3/16 in)}
//! ```
//!
//! Sew the long edge, and trim its allowances.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! A seam can be turned round a curve. The drawings of later steps show a piece that was trimmed whole as trimmed.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Trim, include_str!("trim.rs"), trim);

fn trim(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.check_not_turned(deed);
    for seam in player.seams_at(&deed.all) {
        player.state.seams[seam].eased = true;
    }
}
