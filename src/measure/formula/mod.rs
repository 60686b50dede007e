//! Formulas: what an author writes to derive one measurement from others, read into a tree and worked
//! out with exact numbers.

mod evaluate;
pub(super) mod functions;
mod lex;
mod mismatch;
mod outcome;
mod parse;
mod tree;

pub use evaluate::{PI, evaluate, explain};
pub use outcome::{Lookup, Names, Outcome};
pub use tree::{Comparison, Expr, ExprKind, Formula, Operator};
