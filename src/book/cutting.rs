//! What is cut: the pieces and their numbers, from what and how many, cloth with its pieces, and the sheets.

use serde::{Deserialize, Serialize};

use super::amount::Amount;
use super::prose::Block;

/// The pieces side by side.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct PieceDrawings {
    /// How many millimetres of cloth one on paper stands for.
    pub scale: u32,
    /// The pieces, in the order of their numbers.
    pub pieces: Vec<PieceDrawing>,
}

/// A piece as it is shown.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct PieceDrawing {
    /// Its stable id.
    pub id: String,
    /// Its place in the facts.
    pub at: usize,
    /// Its number on the page and on the sheets, from 1.
    pub number: usize,
    /// Its name on the page.
    pub name: String,
    /// The size that is drawn.
    pub size: usize,
    /// The sizes shown that have it.
    pub sizes: Vec<usize>,
    /// Its name among the drawings.
    pub drawing: String,
}

/// What to cut from one fabric.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutList {
    /// The fabric's stable id.
    pub id: String,
    /// Its place in the facts.
    pub at: usize,
    /// Its name on the page.
    pub name: String,
    /// The pieces.
    pub rows: Vec<CutRow>,
}

/// A piece to cut.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct CutRow {
    /// The piece's stable id.
    pub id: String,
    /// Its place in the facts.
    pub at: usize,
    /// Its name on the page.
    pub name: String,
    /// The names of the copies; empty where they are only counted.
    pub copies: Vec<String>,
    /// How many.
    pub count: u32,
    /// Whether it has no pattern piece on the sheets: it is cut with a ruler.
    pub by_ruler: bool,
    /// The edges that have a notch in their middle, where no sheet shows it.
    pub snips: Vec<String>,
    /// Whether it is cut on the fold.
    pub fold: bool,
    /// Whether it is cut on the fold in name only: its fold does not run along the cloth, so that it is
    /// laid whole.
    pub opened: bool,
    /// How many copies are cut from a single layer of folded cloth, whatever its width.
    pub single_layer: usize,
    /// Whether every second copy is cut from the outline turned over.
    pub mirrored: bool,
    /// Width and height over all, one pair for each size shown; `None` where a size does not cut it.
    pub dimensions: Vec<Option<(Amount, Amount)>>,
    /// More to know.
    pub note: Vec<Block>,
}

/// Pieces laid on cloth.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Layout {
    /// The fabric's stable id.
    pub id: String,
    /// Its name on the page.
    pub name: String,
    /// The size that is laid.
    pub size: usize,
    /// The width of the cloth.
    pub width: Option<Amount>,
    /// Whether the cloth is folded along its length.
    pub folded: bool,
    /// The names of the pieces that are cut from a single layer of folded cloth.
    pub single_layer: Vec<String>,
    /// The names of those among them that are laid turned over.
    pub turned_over: Vec<String>,
    /// The names of the pieces that lie where folded cloth is opened out.
    pub opened: Vec<String>,
    /// How much to buy; `None` where it could not be reckoned.
    pub buy: Option<Amount>,
    /// Its name among the drawings.
    pub drawing: String,
}

/// The map of the joined sheets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetMap {
    /// Its name among the drawings.
    pub drawing: String,
    /// The names of the sheets, in the order of the pages.
    pub sheets: Vec<String>,
    /// How many rows the grid has.
    pub rows: usize,
    /// How many columns.
    pub columns: usize,
    /// How many sheets a plain grid would take.
    pub naive: usize,
    /// The sheets of each thing shown, where the pattern is for several.
    pub lists: Vec<SheetList>,
}

/// The sheets that a maker of one thing prints.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct SheetList {
    /// The thing's name on the page.
    pub name: String,
    /// The names of the sheets, in the order of the pages.
    pub sheets: Vec<String>,
}
