//! Buttons are sewn on.
//!
//! ## How to write it
//! Name the buttons and where they go: a row of marks, an edge, or a piece. Marks tell how many go there;
//! without them, `count` does, or all that are bought are meant.
//!
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   buttons: {kind: button, name: Flat button, size: 18 mm (11/16 in), count: 3}
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//!   tab: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: [strap, tab]
//! - {button: [buttons, tab.top], count: 2, by: hand}
//! - {button: [buttons, strap], count: 1, by: hand}
//! ```
//!
//! Sew two buttons to the tab, and one to the strap.
//! ````
//!
//! ## What it needs
//! As many buttons are bought as are sewn on, and as there are buttonholes, where there are any.
//!
//! ## What it changes
//! An opening that was left for the thing is filled.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Button, include_str!("button.rs"), button);

fn button(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    player.fill_gaps(&deed.all, deed.moment);
}
