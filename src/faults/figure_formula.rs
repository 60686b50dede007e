//! A formula in a diagram cannot be worked into the drawing.
//!
//! ## Why it matters
//! The diagram would be drawn at a guess, and makers lay their cloth beside it to compare.
//!
//! ## Wrong
//! ```svg
//! <rect class="right-side" x="5" y="4" width="{width * height}" height="20"/>
//! ```
//!
//! ## Right
//! ```svg
//! <rect class="right-side" x="5" y="4" width="{width}" height="{height}"/>
//! ```
//!
//! ## Limits
//! Told here are a quantity that cannot be drawn, such as an area or a weight, a brace that is never
//! closed, a bar in an attribute, and a `data-scale` that is no scale. Faults inside the formula itself
//! have the names that they have in the facts: `unknown-name`, `unit-mismatch` and their neighbours.

use crate::diag::{Check, Group};

/// A formula in a diagram cannot be worked into the drawing.
pub static FIGURE_FORMULA: Check = Check::error("figure-formula", Group::Figures, include_str!("figure_formula.rs"));
