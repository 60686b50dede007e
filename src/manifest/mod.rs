//! The manifest of an edition: the whole book of every size and of all, with the outlines of the pieces and what
//! stands on each pattern sheet, as JSON that is read back into the very same.
//!
//! Fractions stay fractions. Keys stand in a fixed order, so that one edition gives the same bytes each time; whoever
//! compares two editions reads both, and goes by what they mean.

mod fault;
mod gather;
mod record;
mod sound;
mod text;

pub use fault::ManifestFault;
pub use gather::{Issued, gather};
pub use record::{
    EdgeRecord, LineRecord, Manifest, NamedValue, OutlineRecord, PictureRecord, PieceRecord, SheetRecord, SheetsRecord,
    ShownRecord,
};
pub use text::{FORMAT, SCHEMA, SCHEMA_NAME, read, write};
