//! A thing is fastened to another by other means than a seam of its edges.
//!
//! ## How to write it
//! Name the things; say how in words behind.
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
//! - attach: [strap, tab, with two rivets]
//! ```
//!
//! Attach the strap to the tab.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! An opening that was left for the thing is filled.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Attach, include_str!("attach.rs"), attach);

fn attach(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.fill_gaps(&deed.all, deed.moment);
}
