//! Pieces laid on cloth: bolts, the fold, the nap, layouts as drawings, and how much to buy.
//!
//! All numbers are mm at true size.

mod drawing;
mod layout;

pub use drawing::{cloth_scale, draw_cloth};
pub use layout::{Bolt, ClothFault, ClothLayout, LaidPiece, bolts, lay_out};
