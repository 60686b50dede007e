//! Text with its place: names, words and formulas as the author typed them.

use std::ops::Range;

use crate::measure::Formula;
use crate::source::Span;

/// A name and where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Name {
    /// The name.
    pub text: String,
    /// Its place.
    pub span: Span,
}

/// Words and where they stand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Text {
    /// The words, quotes and escapes resolved.
    pub text: String,
    /// Their place, quotes left out.
    pub span: Span,
    /// Whether the words stand in the file letter for letter, so that a range of them is a range
    /// of the file.
    pub verbatim: bool,
}

impl Text {
    /// The place of a byte range of the words; all of them when they do not stand letter for letter.
    pub fn at(&self, range: Range<usize>) -> Span {
        if self.verbatim { self.span.part(range) } else { self.span }
    }
}

/// A formula and where it stands.
#[derive(Debug, Clone)]
pub struct Expression {
    /// What it says.
    pub formula: Formula,
    /// Its text and place.
    pub source: Text,
}

impl Expression {
    /// The place of the whole formula.
    pub fn span(&self) -> Span {
        self.source.span
    }
}
