//! Outlines of pattern pieces: what an author described becomes a cutting line and a stitching
//! line with named edges, so that lengths, areas, notches and allowances are reckoned, not drawn by
//! eye.
//!
//! Everything is in millimetres, y grows downwards, and a closed line runs clockwise as seen. The
//! module knows no paper, no sizes and no formulas.

mod crossing;
mod exact;
mod fault;
mod fold;
mod offset;
mod outline;
mod read;
mod ring;
mod shape;
mod spec;

pub use fault::ShapeFault;
pub use outline::Outline;
pub use shape::{Along, Edge, EdgePoint, Shape};
pub use spec::{Allowances, CornerOut, Drawn, Run, RunKind, Spec};

/// Pieces of one outline whose ends lie no further apart than this, in mm, count as joined: the
/// width of a pencil line is ten times as much.
pub const JOIN_WITHIN: f64 = 0.05;

/// No coordinate may lie further out than this, in mm (one kilometre): beyond it a figure is a slip
/// of the unit, and the arithmetic would lose the hundredths of a millimetre promised here.
pub const FARTHEST: f64 = 1_000_000.0;
