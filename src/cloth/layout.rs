//! Cloth with its pieces, and pieces that do not go on their cloth.

use kurbo::BezPath;

use super::bolt::Bolt;
use super::layers::Layers;
use crate::measure::{Exact, to_f64};
use crate::resolve::PieceId;

/// A piece on the cloth.
#[derive(Debug, Clone)]
pub struct LaidPiece {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// Its outline at its place, in mm: x across the cloth from the fold or the selvedge, y along it.
    /// Where folded cloth is opened out, x runs to both sides of the fold.
    pub outline: BezPath,
    /// The layers that it is cut through.
    pub layers: Layers,
    /// Whether the pattern lies face down.
    pub turned_over: bool,
    /// Whether it is laid whole although half of it is drawn, since its fold does not run along the
    /// cloth.
    pub opened: bool,
}

/// Cloth with its pieces.
#[derive(Debug, Clone)]
pub struct ClothLayout {
    /// The cloth.
    pub bolt: Bolt,
    /// The length that the pieces take, in mm.
    pub length: f64,
    /// From where on folded cloth is opened out, in mm along it; `None` where it lies as it is all along.
    pub opened_from: Option<f64>,
    /// The length to buy in mm, to the next 0.1 m and to the next 1/8 yd. `None` when it cannot be held.
    pub buy: Option<(Exact, Exact)>,
    /// The pieces.
    pub pieces: Vec<LaidPiece>,
}

/// Every bolt of one size, laid or too narrow.
pub type Laid = Vec<Result<ClothLayout, Box<ClothFault>>>;

/// Pieces that are wider than their cloth.
#[derive(Debug, Clone)]
pub struct ClothFault {
    /// The cloth.
    pub bolt: Bolt,
    /// The pieces.
    pub pieces: Vec<TooWide>,
}

/// A piece that is wider than its cloth in every way it may lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TooWide {
    /// The piece, by its place in the facts.
    pub piece: PieceId,
    /// The width that it needs, in mm.
    pub needed: f64,
    /// The layers that it would be cut through, which say how wide its room is.
    pub layers: Layers,
}

impl ClothLayout {
    /// The pieces' length before the wash, in mm.
    pub fn unwashed(&self) -> f64 {
        self.length / (1.0 - to_f64(self.bolt.shrinkage))
    }

    /// Whether the pieces take more than the author states. The spare is the author's to leave out.
    pub fn exceeds_stated(&self) -> bool {
        self.bolt.stated_length().is_some_and(|stated| stated < self.length)
    }

    /// Whether a piece is cut through one layer of cloth that is folded.
    pub fn single_layer(&self, laid: &LaidPiece) -> bool {
        self.bolt.folded && laid.layers == Layers::One
    }
}
