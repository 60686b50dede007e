//! Lays pieces on a strip of cloth as short as can be found: rectangles by their boxes, all others
//! by their true outlines, which may nest into each other's hollows.
//!
//! Lengths are in mm; x runs across the strip from its left edge, y along it from its start. The
//! search is bounded by counted steps, never by a clock, and draws its numbers from a generator
//! with a fixed start: the same pieces always get the same layout.

mod bound;
mod boxes;
mod crates;
mod cuts;
mod eased;
mod field;
mod first;
mod heap;
mod item;
mod laying;
mod nofit;
mod outline;
mod pose;
mod random;
mod search;
mod separate;
mod skyline;

pub use item::{Effort, Item, Layout, NestFault, Place, Strip, Turns};
pub use laying::{nest, nest_within};
