//! Darts, pleats and tucks put into a piece: found on its lines, cut out of its edges, folded at their mouths.

mod apply;
mod fault;
mod line;
mod mouth;
mod placing;
mod pleats;
mod ray;
mod way;

pub use apply::Shaped;
pub use fault::ShapingFault;
