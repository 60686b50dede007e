//! The questions that makers ask, with their answers.

use super::prose::{Block, Inline};
use super::text::Name;
use crate::source::Span;

/// A question and its answer.
#[derive(Debug, Clone)]
pub struct Question {
    /// What is asked: the heading.
    pub title: Vec<Inline>,
    /// The heading's place.
    pub span: Span,
    /// From the heading to the next one.
    pub scope: Span,
    /// The step at which it is asked, by its id as written; `None` for a general question.
    pub step: Option<Name>,
    /// The sizes that have it (by their place in `sizes`); `None` for all, or for those of its step.
    pub sizes: Option<Vec<usize>>,
    /// The answer.
    pub answer: Vec<Block>,
}
