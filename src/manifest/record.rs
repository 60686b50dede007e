//! What a manifest holds beside the books.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::book::{Book, ExactAmount, HouseWords};

/// An edition of a booklet, whole.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Manifest {
    /// Which shape the manifest has.
    pub format: u32,
    /// What commands and files call the booklet.
    pub booklet: String,
    /// The words of the house, or the booklet's own, whose keys the books hold.
    pub words: HouseWords,
    /// Every named figure.
    pub values: Vec<NamedValue>,
    /// The pieces with their true outlines.
    pub pieces: Vec<PieceRecord>,
    /// The sets of pattern sheets.
    pub sheets: Vec<SheetsRecord>,
    /// Logo and cover, by their names.
    pub pictures: BTreeMap<String, PictureRecord>,
    /// The book of all sizes.
    pub all: Book,
    /// The book of each size, in their order.
    pub sizes: Vec<Book>,
}

/// A named figure of the facts.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct NamedValue {
    /// Its name; that of a notion's figure holds a dot.
    pub name: String,
    /// One for each size; `None` where a size has none.
    pub each: Vec<Option<ExactAmount>>,
}

/// A piece of the pattern.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PieceRecord {
    /// Its stable id.
    pub id: String,
    /// Its name on the page.
    pub name: String,
    /// One for each size; `None` where a size does not have it.
    pub outlines: Vec<Option<OutlineRecord>>,
}

/// A piece in one size. Lines are SVG path data in mm, rounded to a thousandth; the upper left corner is at 0, 0, and
/// y grows downwards.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct OutlineRecord {
    /// The edges, in their order round the piece.
    pub edges: Vec<EdgeRecord>,
    /// Every line: where it is cut, sewn and folded, notches, grain, and what is marked inside.
    pub lines: Vec<LineRecord>,
}

/// An edge of a piece.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct EdgeRecord {
    /// Its stable id.
    pub id: String,
    /// Its name on the page.
    pub name: String,
    /// The allowance between the cutting line and the stitching line.
    pub allowance: ExactAmount,
    /// Where it is cut.
    pub cut: String,
}

/// A line of a piece.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct LineRecord {
    /// What it is: the class of its look on the sheets.
    pub class: String,
    /// The line.
    pub path: String,
}

/// A set of pattern sheets on one paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetsRecord {
    /// What files call the set: a size, a view, or all of them nested.
    pub of: String,
    /// The paper.
    pub paper: String,
    /// The sizes on it, by their places in `sizes`.
    pub sizes: Vec<usize>,
    /// The sheets, in the order of the pages.
    pub pages: Vec<SheetRecord>,
}

/// A sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetRecord {
    /// Its name: row and column.
    pub name: String,
    /// What stands on it.
    pub shows: Vec<ShownRecord>,
}

/// A piece on a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct ShownRecord {
    /// The piece's stable id.
    pub piece: String,
    /// The size, by its place in `sizes`.
    pub size: usize,
    /// A checksum of the lines at their place on the sheet.
    pub lines: String,
}

/// A logo or a cover, whose file lies beside the manifest.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PictureRecord {
    /// The ending of its file name, in small letters.
    pub ending: String,
    /// How many bytes it has.
    pub bytes: usize,
    /// The checksum of the file.
    pub sha256: String,
}
