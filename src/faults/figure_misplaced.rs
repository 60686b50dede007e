//! A diagram stands in a place where none can be printed.
//!
//! ## Why it matters
//! Inside a heading, a table, a choice, a link or a word in bold, in answers and in the words of `booklet.yaml`,
//! there is no room for a drawing; it would be left out.
//!
//! ## Wrong
//! ````md
//! ## Look at the seams ![Sewn on three sides](figures/press.svg) {#look-at-the}
//!
//! Compare them with the diagram.
//! ````
//!
//! ## Right
//! ````md
//! ## Look at the seams {#look-at-the}
//!
//! Compare them with the diagram.
//!
//! ![Sewn on three sides](figures/press.svg)
//! ````
//!
//! ## Limits
//! A diagram in the middle of a paragraph is in order: it is printed below the words before it.

use crate::diag::{Check, Group};

/// A diagram stands in a place where none can be printed.
pub static FIGURE_MISPLACED: Check =
    Check::error("figure-misplaced", Group::Words, include_str!("figure_misplaced.rs"));
