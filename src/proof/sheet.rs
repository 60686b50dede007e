//! A step of the proof as plain data: its words, its work and its pictures beside one another.

use serde::Serialize;

use super::row::{Row, Sentence};

/// A step with all that is known of it.
#[derive(Debug, Clone, Serialize)]
pub struct StepSheet {
    /// Its stable id.
    pub id: String,
    /// Its number; that of the booklet of all sizes.
    pub number: usize,
    /// The part that it stands in.
    pub part: String,
    /// The heading.
    pub title: String,
    /// Where it is written.
    pub place: String,
    /// The names of the sizes that have it; none where it is all.
    pub sizes: Vec<String>,
    /// The words, as sizes read them.
    pub words: Vec<Telling>,
    /// The work.
    pub work: Vec<WorkRow>,
    /// Whether the work states any figure.
    pub figures: bool,
    /// The seam allowance, edge by edge.
    pub edges: Vec<EdgeRow>,
    /// The pictures.
    pub pictures: Vec<PictureRow>,
    /// The sentences and labels that hold a figure.
    pub sentences: Vec<Sentence>,
}

/// The words of a step as some sizes read them.
#[derive(Debug, Clone, Serialize)]
pub struct Telling {
    /// The names of the sizes; none where all read them.
    pub sizes: Vec<String>,
    /// The size whose figures stand in the words; `None` where there is one size alone.
    pub of: Option<String>,
    /// Paragraphs, items and cells.
    pub lines: Vec<String>,
}

/// A fact of the work.
#[derive(Debug, Clone, Serialize)]
pub struct WorkRow {
    /// What is done to what, as some sizes do it.
    pub done: Vec<Done>,
    /// Where it is written.
    pub place: String,
    /// Its figures.
    pub rows: Vec<Row>,
}

/// What is done to what.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Done {
    /// The names of the sizes; none where all do it.
    pub sizes: Vec<String>,
    /// The key of the verb.
    pub verb: String,
    /// The pieces and edges, side by side.
    pub what: Vec<String>,
    /// How, in few words.
    pub how: Vec<String>,
}

/// The allowance of edges of a piece that are sewn alike at one step.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct EdgeRow {
    /// The piece.
    pub piece: String,
    /// Its edges; none for the whole piece.
    pub edges: Vec<String>,
    /// The key of the verb.
    pub verb: String,
    /// How far from the edge it is sewn.
    pub sewn: Row,
    /// With which allowance it was cut; `None` for a row of stitches that keeps a distance of its own, and where the piece
    /// states none.
    pub cut: Option<Row>,
    /// Whether the two differ in any size.
    pub apart: bool,
    /// Whether sizes differ.
    pub differs: bool,
}

/// A picture in some sizes.
#[derive(Debug, Clone, Serialize)]
pub struct PictureRow {
    /// What it shows, in words.
    pub alt: String,
    /// The author's file; empty for one that the compiler draws.
    pub place: String,
    /// The smallest size, the middle one and the largest; one alone where they are alike.
    pub views: Vec<PictureView>,
}

/// A picture in one size.
#[derive(Debug, Clone, Serialize)]
pub struct PictureView {
    /// The sizes that it is drawn for.
    pub sizes: String,
    /// Where the templates find it.
    pub path: String,
    /// Its width on paper, in mm.
    pub width: f64,
    /// Its height on paper, in mm.
    pub height: f64,
}
