//! The words of a booklet as a tree, for one size or for all.

use serde::{Deserialize, Serialize};

use super::amount::Value;

/// A block.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the fields say what they hold")]
pub enum Block {
    Paragraph {
        content: Vec<Inline>,
    },
    Heading {
        level: u8,
        content: Vec<Inline>,
    },
    List {
        ordered: bool,
        start: u64,
        items: Vec<Vec<Block>>,
    },
    Tasks {
        items: Vec<Vec<Block>>,
    },
    Quote {
        content: Vec<Block>,
    },
    Notice {
        notice: Notice,
        content: Vec<Block>,
    },
    Code {
        text: String,
    },
    Rule,
    Table {
        align: Vec<Side>,
        header: Vec<Vec<Inline>>,
        rows: Vec<Vec<Vec<Inline>>>,
    },
    Figure(Picture),
    /// What differs between sizes in more than figures and choices: each group of sizes has its own.
    BySize {
        branches: Vec<BlockBranch>,
    },
}

/// The blocks of some sizes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct BlockBranch {
    /// The sizes, by their places in `sizes`.
    pub sizes: Vec<usize>,
    /// What they are told.
    pub content: Vec<Block>,
}

/// What sort of notice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the words of the notices")]
pub enum Notice {
    Note,
    Tip,
    Important,
    Warning,
    Caution,
}

/// How a column is set; the reader's language decides where nothing is stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names say it")]
pub enum Side {
    None,
    Left,
    Center,
    Right,
}

/// A diagram where it is shown.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Picture {
    /// Its stable id: the id of its step, or of its part, and its place among the diagrams there.
    pub id: String,
    /// What it shows, in words.
    pub alt: Vec<Inline>,
    /// The drawings: one for all sizes, or one for each group of sizes that share it.
    pub views: Vec<View>,
    /// What letters in the drawing stand for, size by size.
    pub notes: Vec<LabelWords>,
}

/// The words of a label that had no room in a drawing of several sizes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LabelWords {
    /// The letter in its place.
    pub letter: char,
    /// The words, each with the sizes that they are for.
    pub each: Vec<(Vec<usize>, String)>,
}

/// One drawing of a diagram.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct View {
    /// The sizes that it is drawn for.
    pub sizes: Vec<usize>,
    /// Its name among the drawings of the book.
    pub drawing: String,
}

/// A run of words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the fields say what they hold")]
pub enum Inline {
    Text {
        text: String,
    },
    Strong {
        content: Vec<Inline>,
    },
    Emphasis {
        content: Vec<Inline>,
    },
    Code {
        text: String,
    },
    Value {
        value: Value,
    },
    /// What a choice by size comes to, where all sizes shown take the same branch of it or say the same.
    Choice {
        /// The branch, by its place in the author's choice.
        branch: usize,
        content: Vec<Inline>,
    },
    /// What differs between the sizes; a size that says nothing has no branch.
    BySize {
        branches: Vec<InlineBranch>,
    },
    Reference(Reference),
    Link {
        url: String,
        content: Vec<Inline>,
    },
    Break,
    Footnote {
        content: Vec<Block>,
    },
}

/// The words of some sizes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct InlineBranch {
    /// The sizes, by their places in `sizes`.
    pub sizes: Vec<usize>,
    /// What they are told.
    pub content: Vec<Inline>,
}

/// A reference inside the booklet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Reference {
    /// What it leads to.
    pub to: Aim,
    /// The stable id of that thing.
    pub id: String,
    /// The author's own words; empty for the usual ones.
    pub content: Vec<Inline>,
    /// The name that the usual words hold, where they hold one: of a piece, a notion, a fabric, a term.
    pub name: String,
}

/// What a reference leads to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names say it")]
pub enum Aim {
    Step,
    Part,
    Figure,
    Piece,
    Notion,
    Fabric,
    Term,
}

impl Inline {
    /// Plain words.
    pub fn text(words: impl Into<String>) -> Inline {
        Inline::Text { text: words.into() }
    }
}
