//! Buttonholes are sewn and cut open.
//!
//! ## How to write it
//! Name the row of marks that shows them, the edge that they lie along, or the piece. Marks tell how many there
//! are; without them, `count` does. How long a
//! hole is follows from its button: `buttonhole_length(buttons.size, 3 mm)`.
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
//! - {buttonhole: strap.top, count: buttons.count}
//! - {button: [buttons, tab.top], count: buttons.count, by: hand}
//! ```
//!
//! Sew {buttons.count | words} buttonholes into the strap, and the buttons to the tab.
//! ````
//!
//! ## What it needs
//! The edge is sewn, faced or hemmed first: a hole is cut through all layers. There are as many holes as
//! buttons.
//!
//! ## What it changes
//! The holes lie in the edge; nothing can be sewn to it any more.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::{Player, edges};
use crate::model::Verb;
use crate::resolve::{CopyId, EdgeId, Inside, Touched};

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Buttonhole, include_str!("buttonhole.rs"), buttonhole);

fn buttonhole(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    let marked = deed.targets.iter().filter_map(|target| beside(player, target));
    let all: Vec<(CopyId, EdgeId)> = edges(&deed.targets).into_iter().chain(marked).collect();
    for (copy, edge) in all {
        player.state.edge(copy, edge).holed.get_or_insert(deed.moment);
    }
}

/// The edge that a row of marked holes runs along.
fn beside(player: &Player<'_>, target: &Touched) -> Option<(CopyId, EdgeId)> {
    let Touched::Inside(copy, Inside::Mark(at)) = target else { return None };
    let piece = player.edition.cast[*copy].piece;
    let mark = player.edition.values.marks(piece).get(*at)?.as_ref()?;
    Some((*copy, mark.edge_along(player.edition.values.shape(piece)?)?))
}
