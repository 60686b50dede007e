//! What an author can describe: the shape of one line, which line it is, and the allowances between
//! it and the other.

use crate::measure::Exact;

/// An outline as the author described it, numbers worked out, in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum Spec {
    /// A rectangle with the edges `top`, `right`, `bottom` and `left`, its top left corner at 0, 0.
    Rectangle {
        /// From left to right.
        width: Exact,
        /// From top to bottom.
        height: Exact,
        /// Corners taken out, at the top, at the bottom or at both.
        corners_out: Vec<CornerOut>,
    },
    /// A length of tape that runs across, with the edges `side_a`, `end`, `side_b` and `start`.
    Strip {
        /// From its start to its end.
        length: Exact,
        /// From one side to the other.
        width: Exact,
    },
    /// Runs in order from a start point.
    Path(Vec<Run>),
    /// Pieces of one outline drawn elsewhere, in order: the name of the edge, which may be empty,
    /// and SVG path data in mm. One entry without a name is a single edge called `outline`.
    Drawing(Vec<(String, String)>),
}

/// A rectangle cut out of both corners of one side. It adds two edges, such as
/// `bottom_left_corner` and `bottom_right_corner`, each the two straight runs of the cut.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CornerOut {
    /// At the two top corners, otherwise at the two bottom corners.
    pub at_top: bool,
    /// How far the cut goes in from the side, in mm.
    pub width: Exact,
    /// How far the cut goes in from the top or the bottom, in mm.
    pub height: Exact,
}

/// One run of a path: a start point, a straight line or a curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The edge that it belongs to. Neighbouring runs of one name are one edge. The name of a start
    /// does not matter.
    pub name: String,
    /// Where it ends, in mm. `None`: it closes the outline.
    pub to: Option<[Exact; 2]>,
    /// How it gets there.
    pub kind: RunKind,
}

/// How a run gets from the end of the one before to its own.
#[derive(Debug, Clone, PartialEq)]
pub enum RunKind {
    /// It draws nothing: here the outline begins.
    Start,
    /// In a straight line.
    Straight,
    /// Along a cubic curve with these two control points, in mm.
    Cubic([[Exact; 2]; 2]),
    /// Along a part of a circle.
    Arc {
        /// The radius of the circle, in mm.
        radius: Exact,
        /// It turns left as one walks along it, otherwise right.
        left: bool,
        /// The way round that is more than half of the circle, otherwise the shorter one.
        large: bool,
    },
}

/// The allowance at every edge, in mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Allowances {
    /// At the edges that are not named below.
    pub all: Exact,
    /// At edges of their own; where an edge stands twice, the last counts.
    pub by_edge: Vec<(String, Exact)>,
    /// The edge that lies on the fold of the cloth: no allowance there, whatever is said above.
    pub fold: Option<String>,
}

/// Which line the author drew.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Drawn {
    /// The cutting line: the stitching line lies inside it.
    Cutting,
    /// The stitching line: the cutting line lies outside it.
    Stitching,
}

/// A place along an edge, counted in the direction of [`super::Edge::path`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Along {
    /// Half-way.
    Centre,
    /// This share of the length, from 0 to 1.
    Fraction(Exact),
    /// This many mm from the start.
    FromStart(Exact),
    /// This many mm from the end.
    FromEnd(Exact),
}
