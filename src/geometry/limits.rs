//! The two lengths that all of the geometry keeps to: when ends count as joined, and how far out a
//! point may lie.

/// Pieces of one outline whose ends lie no further apart than this, in mm, count as joined: the
/// width of a pencil line is ten times as much.
pub const JOIN_WITHIN: f64 = 0.05;

/// No coordinate may lie further out than this, in mm (50 m): beyond it a figure is a slip
/// of the unit.
pub const FARTHEST: f64 = 50_000.0;
