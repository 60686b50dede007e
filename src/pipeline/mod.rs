//! The way through the house for one booklet: read, work out, draw, check, report.
//!
//! A [`Workshop`] owns all that came of it, as far as it was asked to go, and can be kept: yesterday's
//! good one beside today's.

mod assets;
mod books;
mod cloth;
mod manifest;
mod press;
mod proof;
mod screen;
mod ways;
mod workshop;

pub use manifest::NamedSet;
pub use workshop::{Reach, Workshop};
