//! A raw edge is kept from fraying.
//!
//! ## How to write it
//! Name the edges, and say how with `by: overlock`, `zigzag`, `pinking`, `binding` or `hand`. Where the facts
//! say `finishing: required`, every allowance that stays inside has to be finished or enclosed.
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
//! - finish: [strap.top, tab.top]
//!   by: zigzag
//! ```
//!
//! Sew the long edge, and zigzag over both allowances.
//! ````
//!
//! ## What it needs
//! The pieces are cut. It may come before or after the seam.
//!
//! ## What it changes
//! The edge is neat: it is no longer raw, whether a seam holds it or not. Thread for the machine is reckoned.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::construct::slits;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Finish, include_str!("finish.rs"), finish);

fn finish(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    slits::neaten(player, deed, false);
    player.each_edge(&deed.all, |edge| {
        edge.neat.get_or_insert(deed.moment);
    });
}
