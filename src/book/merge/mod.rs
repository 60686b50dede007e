//! The books of all sizes laid over one another: `20 (26, 32) cm`, sizes in the same order everywhere.
//!
//! What is the same stands once. Figures that differ stand in a row, words that differ are told size
//! by size, and what only some sizes have says which. Things meet by their stable ids and stand in the
//! order in which their author wrote them; nothing is matched by a number or by its looks.

mod drawings;
mod help;
mod lists;
mod order;
mod prose;
mod steps;
mod volume;

pub use volume::{Shared, merge};
