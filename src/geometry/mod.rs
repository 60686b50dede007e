//! Outlines of pattern pieces: what an author described becomes a cutting line and a stitching
//! line with named edges, so that lengths, areas, notches and allowances are reckoned, not drawn by
//! eye.
//!
//! Everything is in millimetres, y grows downwards, and a closed line runs clockwise as seen. The
//! module knows no paper, no sizes and no formulas.

mod crease;
mod crossing;
mod dart;
mod edge;
mod exact;
mod fault;
mod fold;
mod limits;
mod offset;
mod opened;
mod outline;
mod part;
mod read;
mod ring;
mod shape;
mod shaping;
mod spec;
mod symmetry;

pub use crease::{Crease, Kept};
pub use dart::{Dart, DartSpec, Fold, Laid, Pleat, PleatSpec, Tip};
pub use edge::{Edge, EdgePoint};
pub use fault::ShapeFault;
pub use limits::{FARTHEST, JOIN_WITHIN};
pub use outline::Outline;
pub use read::moved_path;
pub use shape::Shape;
pub use shaping::{Shaped, ShapingFault};
pub use spec::{Allowances, Along, CornerOut, Drawn, Run, RunKind, Spec};
