//! What has changed between two editions, told to those who bought the older one: by what things mean, never by bytes.
//!
//! Words that were only put better are not told; a figure, a step, a piece, a notion or an outline is.

mod change;
mod compare;
mod differ;
mod lists;
mod next;
mod outlines;
mod reprint;
mod sheet;
mod steps;

pub use change::{Change, Errata, Matter, Reprint};
pub use compare::compare;
pub use next::{next_edition, record_line};
pub use sheet::buyers_sheet;
