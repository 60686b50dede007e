//! The booklet as plain data, before any size is chosen: what the author wrote, each thing with its place.
//!
//! Nothing here reads, works out or prints. [`Draft`] is what the parsing stage hands on.

mod date;
mod facts;
mod prose;
mod sheet;
mod text;
mod work;

pub use date::Date;
pub use facts::{
    Bend, BySize, Cut, CutCopies, Expectation, Fabric, Facts, FinishedRow, Kind, Measurement, Notch, NotchAt, Notion,
    Outline, Piece, Release, Segment, Show, Size, Style, Tool, Wearer, Word,
};
pub use prose::{
    Alignment, Block, Brace, Branch, Figure, Filter, Inline, ListItem, NoticeKind, Part, Printed, Reference,
    ReferenceKind, Step, Table,
};
pub use sheet::SheetSettings;
pub use text::{Expression, Name, Text};
pub use work::{Param, Verb, Work};

use std::collections::BTreeMap;

use crate::diag::Waiver;
use crate::source::FileId;

/// A booklet as written: the facts, the words, and the waivers found in both.
#[derive(Debug, Clone)]
pub struct Draft {
    /// What commands and output files call the booklet: its folder's name.
    pub name: String,
    /// The folder, from the folder that the command was given.
    pub folder: std::path::PathBuf,
    /// `booklet.yaml`.
    pub file: FileId,
    /// The facts.
    pub facts: Facts,
    /// The parts, in the order of the booklet.
    pub parts: Vec<Part>,
    /// Outlines drawn elsewhere, by file and id: each edge's name (empty for the only one) and its
    /// path in mm, as SVG path data.
    pub outlines: BTreeMap<(String, String), Vec<(String, String)>>,
    /// Whether every part could be read: what is missing from the words may otherwise stand in one
    /// that could not, and is not reported.
    pub whole: bool,
    /// What the author waived.
    pub waivers: Vec<Waiver>,
}

impl Draft {
    /// Every step, in the order of the booklet, whatever its sizes.
    pub fn steps(&self) -> impl Iterator<Item = (&Part, &Step)> {
        self.parts.iter().flat_map(|part| part.steps.iter().map(move |step| (part, step)))
    }

    /// The ids of the sizes, in order.
    pub fn size_ids(&self) -> Vec<String> {
        self.facts.sizes.iter().map(|size| size.id.text.clone()).collect()
    }
}

/// Whether something that may be for some sizes only is for the size at `size`.
pub fn is_for(sizes: Option<&Vec<usize>>, size: usize) -> bool {
    sizes.is_none_or(|sizes| sizes.contains(&size))
}
