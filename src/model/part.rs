//! Parts and steps: the words of a booklet in their order, with the work that each step does.

use std::path::PathBuf;

use super::offer::Stake;
use super::prose::{Block, Inline};
use super::text::Name;
use super::video::Moment;
use super::work::{Handed, Work};
use crate::source::{FileId, Span};

/// A part of the booklet: one Markdown file, or a shared one with parameters.
#[derive(Debug, Clone)]
pub struct Part {
    /// Its file.
    pub file: FileId,
    /// The file's folder, from the folder that the command was given: its diagrams are named from
    /// there.
    pub folder: PathBuf,
    /// Its id, for references; `None` when the heading gives none.
    pub id: Option<Name>,
    /// The heading.
    pub title: Vec<Inline>,
    /// The heading's place.
    pub span: Span,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
    /// What its braces leave to the maker.
    pub stake: Option<Stake>,
    /// When it is shown in the video.
    pub watch: Option<Moment>,
    /// What it belongs to of all that is left to her, by its place in the draft.
    pub offer: Option<usize>,
    /// What stands before the first step.
    pub intro: Vec<Block>,
    /// The steps.
    pub steps: Vec<Step>,
    /// What the booklet handed to a shared part.
    pub params: Handed,
}

/// A step.
#[derive(Debug, Clone)]
pub struct Step {
    /// Its id, for references.
    pub id: Option<Name>,
    /// The heading.
    pub title: Vec<Inline>,
    /// The heading's place.
    pub span: Span,
    /// From the heading to the next one.
    pub scope: Span,
    /// The sizes that have it (by their place in `sizes`); `None` for all.
    pub sizes: Option<Vec<usize>>,
    /// What its braces leave to the maker.
    pub stake: Option<Stake>,
    /// When it is shown in the video.
    pub watch: Option<Moment>,
    /// What it belongs to of all that is left to her, by its place in the draft.
    pub offer: Option<usize>,
    /// The words and figures.
    pub body: Vec<Block>,
    /// What is done, in facts.
    pub works: Vec<Work>,
}
