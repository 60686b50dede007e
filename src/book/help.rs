//! The questions that makers ask.

use serde::{Deserialize, Serialize};

use super::prose::{Block, Inline};

/// A question and its answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Question {
    /// Its stable id.
    pub id: String,
    /// Its place among all questions.
    pub at: usize,
    /// The id of the step at which it is asked; `None` for a general question.
    pub step: Option<String>,
    /// What is asked.
    pub title: Vec<Inline>,
    /// What is answered.
    pub answer: Vec<Block>,
    /// The sizes that its author wrote it for, shown here or not.
    pub sizes: Vec<usize>,
}
