//! What the author says of the folder that a seller uploads.

use super::text::Text;
use crate::source::Span;

/// The record `shop:`.
#[derive(Debug, Clone, Default)]
pub struct Shop {
    /// The pages to show as pictures; none where the program is to choose.
    pub preview: Vec<Preview>,
    /// How many letters the text for the shop may have, and where that is stated.
    pub letters: Option<(usize, Span)>,
    /// How many bytes a file may have, and where that is stated.
    pub largest: Option<(u64, Span)>,
}

impl Shop {
    /// Letters of a shop's text where nothing is stated (common practice, no source).
    pub const LETTERS: usize = 4_000;
    /// Bytes of a file where nothing is stated (common practice, no source).
    pub const LARGEST: u64 = 20_000_000;
}

/// A page to show.
#[derive(Debug, Clone)]
pub enum Preview {
    /// By its number, from 1; the cover is the first.
    Page(usize, Span),
    /// That on which a step begins, by the step's id.
    Step(Text),
}
