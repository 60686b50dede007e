//! Pieces and their seams are pressed with the iron.
//!
//! ## How to write it
//! Name pieces or edges; say which way in words behind.
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
//! - press: [strap, the allowances open]
//! ```
//!
//! Sew the long edge, and press the allowances open.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! Every seam that holds one of the pieces is pressed, and may be topstitched.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;
use crate::resolve::Touched;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Press, include_str!("press.rs"), press);

fn press(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for seam in &mut player.state.seams {
        seam.pressed |= seam.members.iter().any(|member| match member {
            Touched::Copy(copy) | Touched::Edge(copy, _) => deed.touched.contains(copy),
            _ => false,
        });
    }
}
