//! A figure in every size, and the sentence that it stands in: what all of the proof is made of.

use serde::Serialize;

/// Where a figure comes from: the key of how, what is written there, and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Origin {
    /// The key of the words that say how it comes about.
    pub how: &'static str,
    /// What is written there; empty where nothing need be quoted.
    pub text: String,
    /// The file and the line.
    pub place: String,
}

/// A figure in every size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Row {
    /// The letter by which the words above it call it; empty where none do.
    pub mark: String,
    /// What it is.
    pub name: String,
    /// One for each size; `None` where a size does not have it.
    pub cells: Vec<Option<String>>,
    /// What all cells say; `None` where they differ.
    pub same: Option<String>,
    /// Whether it is typed by hand.
    pub typed: bool,
    /// Where it comes from.
    pub from: Vec<Origin>,
}

impl Row {
    /// A row; what is the same everywhere is told as such.
    pub(super) fn new(name: impl Into<String>, cells: Vec<Option<String>>, from: Vec<Origin>) -> Row {
        let first = cells.first().cloned().flatten();
        let same = first.filter(|first| cells.iter().all(|cell| cell.as_ref() == Some(first)));
        Row { mark: String::new(), name: name.into(), cells, same, typed: false, from }
    }
}

/// A run of words; one that has a mark is a figure.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Run {
    /// The words.
    pub text: String,
    /// The letter of the row below; empty for plain words.
    pub mark: String,
}

/// What some sizes read.
#[derive(Debug, Clone, Serialize)]
pub struct Reading {
    /// The names of the sizes; none where all read it.
    pub sizes: Vec<String>,
    /// The words, with the figures of the first of these sizes.
    pub words: Vec<Run>,
    /// The figures in them.
    pub rows: Vec<Row>,
}

/// A sentence, a cell or a label that holds a figure.
#[derive(Debug, Clone, Serialize)]
pub struct Sentence {
    /// The key of what it is.
    pub kind: &'static str,
    /// The file and the line.
    pub place: String,
    /// What each size reads: one reading where they differ in figures alone.
    pub readings: Vec<Reading>,
}
