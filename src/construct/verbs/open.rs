//! A zip is opened, or a folded piece is opened out again.
//!
//! ## How to write it
//! Name the zip, or the piece.
//!
//! ```yaml
//! notions:
//!   thread: {kind: thread, name: Sewing thread}
//!   zip: {kind: zip, name: Zip, length: "stock(width + 2 cm, [20 cm, 25 cm])", count: 1}
//! ```
//! ````md
//! ## Open the zip {#open}
//!
//! ```work
//! - open: zip
//! ```
//!
//! Open the zip before you go on.
//! ````
//!
//! ## What it needs
//! Nothing.
//!
//! ## What it changes
//! The thing can be turned through the zip, or past it. A piece that was folded counts whole again.

use super::entry::VerbEntry;
use crate::construct::deed::Deed;
use crate::construct::player::Player;
use crate::model::{Kind, Verb};
use crate::resolve::Touched;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Open, include_str!("open.rs"), open);

fn open(player: &mut Player<'_>, deed: &Deed<'_, '_>) {
    for target in &deed.targets {
        if let Touched::Notion(notion) | Touched::ZipEdge(notion, _) = target
            && player.edition.draft.facts.notions[*notion].kind == Kind::Zip
        {
            player.state.open_zips.insert(*notion);
        }
        if let Touched::Copy(copy) = target {
            player.unfold(*copy);
        }
    }
}
