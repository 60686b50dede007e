//! A function is given too much, too little or the wrong sort of thing.
//!
//! ## Why it matters
//! `stock` without its list cannot know which zips a shop sells, and a length that no shop sells is
//! of no use to a maker.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Zip: stock(width + 2 cm)
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Zip: "stock(width + 2 cm, [20 cm, 25 cm, 30 cm])"
//! ```
//!
//! ## Limits
//! A function with a name that does not exist is told by `unknown-name`. A formula with commas or
//! square brackets needs double quotes in YAML when it stands inside braces or begins with a
//! bracket.

use crate::diag::{Check, Group};

/// A function is given too much, too little or the wrong sort of thing.
pub static WRONG_ARGUMENTS: Check =
    Check::error("wrong-arguments", Group::Facts, include_str!("wrong_arguments.rs")).breaking();
