//! A book on its way to the templates, and where they find its drawings.

use crate::book::Book;

/// Where the templates find a drawing of the book.
pub(super) fn path(drawing: &str) -> String {
    format!("/{drawing}.svg")
}

/// A book on its way to the templates.
pub(super) struct Setter<'a> {
    pub book: &'a Book,
}

impl Setter<'_> {
    /// The names of sizes; empty where they are all that the book shows.
    pub fn names(&self, sizes: &[usize]) -> Vec<&str> {
        if sizes == self.book.shown {
            return Vec::new();
        }
        sizes.iter().filter_map(|size| self.book.sizes.get(*size)).map(|size| size.name.as_str()).collect()
    }
}
