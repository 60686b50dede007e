//! Exact quantities and the formulas written with them: the one place where figures are read,
//! reckoned, rounded and written out again, so that no rounding error can creep in between.
//!
//! Everything is a ratio of two whole numbers and every operation is checked: what does not fit is
//! reported, never wrapped round. Floating point appears only in [`to_f64`], for drawing.

mod exact;
mod formula;
mod number;
mod problem;
mod quantity;
mod read;
mod scan;
pub mod shapers;
mod show;
mod unit;

pub use exact::{Exact, down_to, ratio, round_to, square_root, to_f64, up_to};
pub use formula::functions::{FUNCTIONS, FunctionDoc};
pub use formula::{Comparison, Expr, ExprKind, Formula, Lookup, Names, Operator, Outcome, PI, evaluate, explain};
pub use problem::{Problem, ProblemKind};
pub use quantity::{Fault, Measure, Quantity, Stated, convert, nearest_fraction};
pub use read::read_measure;
pub use show::{NumberStyle, ShownNumber, in_words, show};
pub use unit::{Dimension, System, Unit};
