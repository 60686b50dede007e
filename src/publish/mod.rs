//! What goes beside the PDFs of an edition that is published: the text for the shop, the terms of use, checksums; and
//! what keeps an edition from being published.

mod folder;
mod licence;
mod look;
mod shop_text;
mod sums;

pub use folder::edition_folder;
pub use licence::licence;
pub use look::{Earlier, file_sizes, not_of_this, not_raised, text_length, unreadable};
pub use shop_text::{Included, shop_text};
pub use sums::checksums;
