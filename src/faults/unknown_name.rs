//! A name stands for nothing in this booklet.
//!
//! ## Why it matters
//! Where a name leads nowhere there is no figure to print, and a step names a piece that the maker
//! was never told to cut.
//!
//! ## Wrong
//! ```yaml
//! finished:
//!   Width: widht
//! ```
//!
//! ## Right
//! ```yaml
//! finished:
//!   Width: width
//! ```
//!
//! ## Limits
//! Looks at names in formulas, in work and in `cut:`, at `at:` of a waiver, and at `{allowance}`,
//! `{stitch}`, `{leave}`, `{ease}` and `{gather}` in the words of a step whose work does not give
//! that fact, or gives it twice with different figures. In work, the part behind the dot, the edge,
//! is not looked at here. Of fabrics and pieces, formulas can use nothing; of a notion they can use
//! `length`, `amount` and `count`.

use crate::diag::{Check, Group};

/// A name stands for nothing in this booklet.
pub static UNKNOWN_NAME: Check = Check::error("unknown-name", Group::Facts, include_str!("unknown_name.rs")).breaking();
