//! The booklet on a screen: one file that needs nothing else, in which the maker chooses her size.
//!
//! It is made from the same data as the pages on paper, one edition for each size and one for all, and what editions
//! share stands in it once. It holds no layout: that is in `templates/`. Nothing that an author writes can run: words
//! are escaped, drawings are pictures, and the policy in the file's head lets no script run but the house's own.

mod colour;
mod document;
mod drawn;
mod fault;
mod leaf;
mod page;
mod press;
mod sections;
mod words;

pub use document::{Document, document};
pub use fault::PageFault;
pub use leaf::{EVERY, Leaf};
pub use page::{Page, page};
