//! Edges are sewn together in a seam.
//!
//! ## How to write it
//! Name the edges that lie on each other. A seam names its `allowance` and its `stitch` length. Below it
//! may stand `ease` (how much longer one edge is), `gather` (the length that an edge is gathered to) and
//! `leave` (the gap to turn through).
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
//! - sew: [strap.top, tab.top]
//!   allowance: seam
//!   stitch: 2.5 mm
//! ```
//!
//! Sew the long edges together.
//! ````
//!
//! ## What it needs
//! The edges are as long as each other, their notches meet, and the allowance is the one that the pieces
//! have. Nothing is topstitched over them yet.
//!
//! ## What it changes
//! The edges are held by a seam: they are no longer raw, and the pieces hang together. A whole piece stands
//! for all its edges that are still free. A gap is open until it is closed.

use super::entry::VerbEntry;
use super::put;
use crate::construct::deed::Deed;
use crate::construct::player::{Player, edges};
use crate::construct::slits;
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Sew, include_str!("sew.rs"), sew);

fn sew(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    slits::neaten(player, deed, true);
    let (work, moment) = (deed.work, deed.moment);
    let explicit = edges(&deed.targets);
    player.check_places(deed);
    player.check_gap(deed);
    player.check_zip_opening(deed);
    player.sew_tapes(deed);
    player.check_allowance(work, &explicit, moment);
    // Notches of edges that do not fit cannot meet: that follows.
    let in_rows = deed.sides().iter().any(|side| side.len() > 1);
    let eased = work.ease.is_some() || work.gather.is_some();
    if player.check_lengths(deed) && deed.work.part.iter().all(Option::is_none) {
        match eased || in_rows {
            true => player.check_spread(deed),
            false => player.check_notches(&explicit, moment),
        }
    }
    player.check_bound(&explicit, moment);
    player.check_topstitched(&explicit, moment);
    player.check_hands(deed);
    put::check_seam(player, deed);
    player.check_order(deed);
    player.join(deed);
    player.hold_to_itself(deed);
}
