//! The printed booklet: a book as data, set by the templates, written as PDF.
//!
//! The only stage that names typst. It holds no layout: that is in `templates/`. Prose reaches the
//! templates as a tree of data, so nothing that an author writes can run.

mod data;
mod fault;
mod film;
mod finish;
mod fold;
mod glance;
mod help;
mod leaf;
mod made_of;
mod needs;
mod offers;
mod paper;
mod picture;
mod press;
mod prose;
mod setter;
mod world;

pub use data::{Sheaf, lay_out};
pub use fold::{fold, sides};
pub use paper::Paper;
pub use picture::{PagePicture, WantedPage};
pub use press::{Press, PressFault, Printed};
