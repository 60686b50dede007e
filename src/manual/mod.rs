//! The manual: a page for each word of the language, gathered from where the word is defined.
//!
//! Nothing is explained here: checks, keys, verbs, functions, units and diagrams each bring their own page,
//! and this stage finds it by name, lists what there is, and lays all pages out as reference pages.

mod advice;
mod chapter;
mod diagrams;
mod formulas;
mod keys;
mod markdown;
mod page;
mod reference;
mod shelf;
mod work;

pub use advice::advice;
pub use chapter::Chapter;
pub use page::ManualPage;
pub use reference::reference;
pub use shelf::{find, pages};
