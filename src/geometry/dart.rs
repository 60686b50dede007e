//! What takes fullness out of a flat piece: darts, pleats and tucks, as described and as placed.
//!
//! The width of a dart is what it takes out of the seam, so it is counted on the stitching line
//! (common practice, no source).

use kurbo::{Line, Point, Vec2};

use super::spec::Along;
use crate::measure::Exact;

/// The side to which a dart or a pleat is laid.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the names say what they mean")]
pub enum Laid {
    Up,
    Down,
    Left,
    Right,
    Centre,
    Side,
}

/// Where the point of a dart lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Tip {
    /// There, in the author's drawing, in mm.
    Point([Exact; 2]),
    /// So many mm straight in from the stitching line.
    Straight(Exact),
}

/// A dart as its author described it; lengths in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum DartSpec {
    /// One that opens at an edge.
    Edge {
        /// The edge.
        edge: String,
        /// The middle of its mouth.
        at: Along,
        /// What it takes out of the seam.
        width: Exact,
        /// Its point.
        tip: Tip,
        /// To which side it is laid; `None`: down where it runs across, else towards the centre.
        laid: Option<Laid>,
    },
    /// One with a point at each end, widest half-way.
    Inside {
        /// One point.
        from: [Exact; 2],
        /// The other.
        to: [Exact; 2],
        /// What it takes out there.
        width: Exact,
        /// To which side it is laid.
        laid: Option<Laid>,
    },
}

/// How a pleat is folded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fold {
    /// One fold, laid to one side.
    Knife,
    /// Two folds turned away from each other.
    Box,
    /// Two folds that meet.
    Inverted,
    /// One fold, stitched along its whole length.
    Tuck,
}

/// Pleats or tucks as their author described them; lengths in mm.
#[derive(Debug, Clone, PartialEq)]
pub struct PleatSpec {
    /// The edge.
    pub edge: String,
    /// The middle of the first, or of all of them where it is [`Along::Centre`].
    pub at: Along,
    /// How deep each fold is: it takes twice as much.
    pub depth: Exact,
    /// How each is folded.
    pub fold: Fold,
    /// How many.
    pub count: u32,
    /// From the middle of one to the middle of the next; `None`: one lies against the other.
    pub apart: Option<Exact>,
    /// How far the lines run in from the stitching line; `None`: to the other side of the piece.
    pub length: Option<Exact>,
    /// To which side they are laid.
    pub laid: Option<Laid>,
}

/// A dart at its place, in mm, in the author's drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Dart {
    /// The edge at which it opens, by its place among the edges; `None` for one inside the piece.
    pub edge: Option<usize>,
    /// Its points: one, or two where it lies inside the piece.
    pub points: Vec<Point>,
    /// The lines that are sewn together, each from the cutting line or a point to a point.
    pub legs: Vec<Line>,
    /// Where the legs cross the stitching line, or are farthest apart.
    pub mouth: [Point; 2],
    /// Along the middle.
    pub fold: Line,
    /// The direction in which it is laid, one long.
    pub towards: Vec2,
}

/// Pleats or tucks at their place, in mm, in the author's drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Pleat {
    /// The edge, by its place among the edges.
    pub edge: usize,
    /// How each is folded.
    pub fold: Fold,
    /// Each fold: the line that is folded, and the one on which it comes to lie. Of a tuck, the two lines
    /// that are sewn together.
    pub folds: Vec<[Line; 2]>,
    /// What they take out of the edge together.
    pub takes: Exact,
}
