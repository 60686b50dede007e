//! A walk over the events of a text, from which `prose.rs` builds blocks and `words.rs` words.

use pulldown_cmark::Tag;

use super::events::Piece;
use super::reader::Reader;

/// Walks over events and builds prose.
pub(super) struct Builder<'r, 'a, 'p> {
    /// What is known of the text.
    pub reader: &'r mut Reader<'a>,
    /// The events.
    pub pieces: &'p [Piece],
    /// The next one.
    pub at: usize,
}

impl<'r, 'a, 'p> Builder<'r, 'a, 'p> {
    pub fn new(reader: &'r mut Reader<'a>, pieces: &'p [Piece]) -> Self {
        Builder { reader, pieces, at: 0 }
    }
}

/// Whether an element stands inside a line.
pub(super) fn is_inline(tag: &Tag<'_>) -> bool {
    matches!(tag, Tag::Emphasis | Tag::Strong | Tag::Strikethrough | Tag::Link { .. } | Tag::Image { .. })
}
