//! Layers are laid over each other, such as the two sides of an opening.
//!
//! ## How to write it
//! Name the edges along which they lie over each other, and say how far with `by:`. They count as one row where they
//! are sewn.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [17 cm, 5 cm]}, allowance: 1 cm (3/8 in), raw: all, cut: {outer: [left, right]}}
//!   tab: {outline: {rectangle: [29 cm, 5 cm]}, allowance: 1 cm (3/8 in), raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - lap: [left.top, right.top]
//!   by: 3 cm
//! - {sew: [[left.top, right.top], tab.top], allowance: 1 cm (3/8 in), stitch: 2.5 mm}
//! ```
//!
//! Lap the two straps by the width of the opening, and sew them to the tab.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! A row that holds the edges is shorter by what is lapped.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::lengths::millimetres;
use crate::construct::player::{Player, edges};
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Lap, include_str!("lap.rs"), lap);

fn lap(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    if let Some(by) = millimetres(deed.work.lap) {
        player.state.laps.push((edges(&deed.targets), by));
    }
}
