//! An edge is folded under, or a piece is folded up.
//!
//! ## How to write it
//! Name the edge; say which way in words behind. A whole piece is folded in half: `[band, in half lengthwise]`,
//! `[band, crosswise]`; without such a word along its longer side. A line under `marks:` is a line to fold along:
//! `band.crease`. `[band, in half and open again]` only leaves a crease, and `open: band` opens it out.
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
//! - fold: [strap.top, tab.top, to the wrong side]
//! - {topstitch: [strap.top, tab.top], allowance: 3 mm (1/8 in), stitch: 3 mm}
//! ```
//!
//! Fold the long edges under, and stitch them down.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! The edge is folded: it counts as raw until a stitch holds it. Of a piece that lies folded, edges across the fold
//! are as long as the fold leaves them, and edges that lie on each other are one: to sew `band.bottom` is to sew
//! `band.top` with it.

use super::entry::VerbEntry;
use crate::construct::creases;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::Verb;
use crate::resolve::Touched;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Fold, include_str!("fold.rs"), fold);

fn fold(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for target in &deed.all {
        if let Touched::Copy(copy) = target {
            player.state.copies[*copy].folded_up.get_or_insert(deed.moment);
        }
    }
    creases::fold(player, deed);
    for (copy, edge) in player.edges_of(&deed.all) {
        player.handle(copy, deed.moment);
        player.state.edge(copy, edge).folded.get_or_insert(deed.moment);
    }
}
