//! Formulas of the trade that authors would otherwise have to work out themselves: how large a
//! corner to take out, how long a strip becomes, how wide to cut a binding.
//!
//! Every function works on exact numbers, lengths in mm and areas in mm², and gives `None` when the
//! figures it is given make no sense or the result cannot be held. [`SHAPERS`] lists them all.

mod bias;
mod circle;
mod garments;
mod strips;
mod sums;
pub(super) mod table;

pub use bias::{bias_joins, bias_length, bias_square};
pub use circle::{circle_hem, circle_radius};
pub use garments::{
    arc_length, bias_round, button_gap, buttonhole_length, casing_depth, dart_leg, dart_width, elastic_length,
    facing_edge, pleat_depth, pleated,
};
pub use strips::{
    binding_double, binding_single, boxed_corner, boxed_depth, boxed_side, gathered, joined_strips, lining_within,
    zip_tape,
};
pub use sums::pi;
pub use table::{Argument, SHAPERS, ShaperDoc};
