//! The page of the terms of use.

use crate::book::{Leaf, Plain};

/// The page; `None` where the author states no terms.
pub fn licence(plain: &Plain<'_>) -> Option<Leaf> {
    let book = plain.book;
    if book.terms.is_empty() {
        return None;
    }
    let mut leaf = Leaf::default();
    leaf.title(plain.word("licence", &[]));
    let places = [("title", book.title.as_str()), ("edition", &book.edition), ("designer", &book.designer)];
    leaf.words(plain.word("licence_of", &places));
    for line in plain.blocks(&book.terms) {
        match line.strip_prefix("- ") {
            Some(item) => leaf.item(item),
            None => leaf.words(line),
        }
    }
    if let Some(contact) = &book.contact {
        leaf.words(format!("{}: {contact}", plain.word("contact", &[])));
    }
    Some(leaf)
}
