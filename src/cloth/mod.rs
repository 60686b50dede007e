//! Pieces laid on cloth: bolts, the fold, the nap, hands, layouts as drawings, and how much to buy.
//!
//! All numbers are mm at true size.

mod amounts;
mod bolt;
mod cut_out;
mod drawing;
mod hand;
mod label;
mod layers;
mod laying;
mod layout;
mod lie;
mod quilted;

pub use bolt::{Bolt, bolts};
pub use drawing::{ClothWords, cloth_scale, draw_cloth};
pub use layers::Layers;
pub use laying::{lay_out, lay_within_stated};
pub use layout::{ClothFault, ClothLayout, Laid, LaidPiece, TooWide};
pub use lie::lies_at_fold;
pub use quilted::{Quilted, quilted};
