//! One size, worked out, played, drawn and laid, gathered into a book.

mod done;
mod gatherer;
mod help;
mod lists;
mod offers;
mod prose;
mod steps;
mod things;

pub use gatherer::{Supplies, gather};
pub use lists::sheet_map;
