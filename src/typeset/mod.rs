//! The printed booklet: an edition as data, set by the templates, written as PDF.
//!
//! The only stage that names typst. It holds no layout: that is in `templates/`. Prose reaches the
//! templates as a tree of data, so nothing that an author writes can run.

mod combine;
mod cutting;
mod data;
mod drawings;
mod fault;
mod finish;
mod paper;
mod press;
mod rows;
mod world;

pub use combine::combine;
pub use data::{Sheaf, Supplies, edition_data};
pub use paper::Paper;
pub use press::{Press, PressFault, Printed};
