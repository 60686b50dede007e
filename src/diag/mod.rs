//! What is wrong, where, in which sizes, and what to do: findings, from every stage, in one form.
//!
//! A finding is made where the fault is seen and handed to [`Findings`]; levels, waivers, sorting
//! and the merging of sizes happen there and nowhere else. Nothing here knows a check.

mod check;
mod finding;
mod guess;
mod json;
mod level;
mod sink;
mod spoken;
mod terminal;
mod visible;

pub use check::{Check, Group, Home, Page};
pub use finding::Finding;
pub use guess::{did_you_mean, is_slip, nearest};
pub use json::to_json;
pub use level::Level;
pub use sink::{Findings, Report, Waived, Waiver};
pub use spoken::{in_sentence, listed};
pub use terminal::{Terminal, summary};
pub use visible::{is_hidden, visible};
