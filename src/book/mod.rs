//! The finished booklet, from which every output is made: one size gathered, or all sizes merged.
//!
//! A [`Book`] owns all that it holds, can be written out and read back, and knows no format: neither
//! Typst nor HTML. Words of the house are keys in it; layout and language belong to the templates.

mod amount;
mod chapters;
mod cutting;
mod film;
mod gather;
mod help;
mod leaf;
mod merge;
mod needs;
mod offer;
mod plain;
mod prose;
mod seam;
mod thing;
mod volume;

pub use amount::{Amount, ExactAmount, SizedAmount, Value, Written};
pub use chapters::chapters;
pub use cutting::{CutList, CutRow, Layout, PieceDrawing, PieceDrawings, SheetList, SheetMap};
pub use film::Film;
pub use gather::{Supplies, gather, sheet_map};
pub use help::Question;
pub use leaf::{Leaf, Line};
pub use merge::{Shared, merge};
pub use needs::{FabricNeed, NotionAmount, NotionNeed, WidthNeed};
pub use offer::Offer;
pub use plain::{HouseWords, Plain, amounts_in, each_inline, in_blocks};
pub use prose::{Aim, Block, BlockBranch, Inline, InlineBranch, LabelWords, Notice, Picture, Reference, Side, View};
pub use seam::{DoneTo, PlaceFact, SeamFact};
pub use thing::ThingDrawing;
pub use volume::{
    AllowanceUse, Book, Caution, Drawing, FinishedRow, KeyEntry, MeasureRow, Part, PatternView, Photo, Release, Size,
    Step, Tool, Word,
};
