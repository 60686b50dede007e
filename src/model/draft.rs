//! A booklet as written, whole: what reading hands on.

use std::collections::BTreeMap;

use super::facts::Facts;
use super::help::Question;
use super::house_words::HouseWords;
use super::offer::Offer;
use super::part::{Part, Step};
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
    /// What is left to the maker, in the order of the booklet.
    pub offers: Vec<Offer>,
    /// The questions that makers ask, in the order of their file.
    pub help: Vec<Question>,
    /// Outlines drawn elsewhere, by file and id: each edge's name (empty for the only one) and its
    /// path in mm, as SVG path data. Without edges where a fault of the drawing was told.
    pub outlines: BTreeMap<(String, String), Vec<(String, String)>>,
    /// Whether every part could be read: what is missing from the words may otherwise stand in one
    /// that could not, and is not reported.
    pub whole: bool,
    /// The words of the house, or the booklet's own.
    pub house: HouseWords,
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
