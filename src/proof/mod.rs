//! The proof for an editor: every figure with its value in every size and where it comes from, every step with its facts
//! and its pictures, what the checks found, what was waived and why, and what nobody looked at.
//!
//! It is one value, from which a page for a screen and pages on paper are printed, so that both hold the same. Nothing is
//! judged here: it shows what the stages before came to, faults and all.

mod changes;
mod evidence;
mod front;
mod make;
mod numbers;
mod origin;
mod passages;
mod pictures;
mod record;
mod row;
mod sentences;
mod sheet;
mod steps;
mod tables;
mod told;
mod work;

pub use evidence::Evidence;
pub use make::{Proof, proof};
pub use record::Record;
