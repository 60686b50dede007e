//! Snaps, hooks, buckles, rings or rivets are set or sewn on.
//!
//! ## How to write it
//! Name the fastener and where it goes; one that closes two sides names both. Marks tell how many; without
//! them, `count` does, or all that are bought are meant.
//!
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   snaps: {kind: fastener, name: Snap, size: 12 mm (1/2 in), count: 2}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {fasten: [snaps, strap.top, tab.top], count: 2}
//! ```
//!
//! Set two snaps.
//! ````
//!
//! ## What it needs
//! As many are bought as are set.
//!
//! ## What it changes
//! An opening that was left for the thing is filled.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Fasten, include_str!("fasten.rs"), fasten);

fn fasten(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.fill_gaps(&deed.all, deed.moment);
}
