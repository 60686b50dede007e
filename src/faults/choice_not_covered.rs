//! A choice by size has nothing to say in some size.
//!
//! ## Why it matters
//! In that size the sentence would have a hole in it, just where the sizes differ and the words
//! matter most.
//!
//! ## Wrong
//! ````md
//! ## Pin the sides {#pin}
//!
//! Pin each side {small: in two places}.
//! ````
//!
//! ## Right
//! ````md
//! ## Pin the sides {#pin}
//!
//! Pin each side {small: in two places | else: in three places}.
//! ````
//!
//! ## Limits
//! Looks at the words and at diagrams, and only at the sizes that have the step. Where two branches
//! fit a size, the first is taken. An `else:` with nothing after it is a way to say that there is
//! nothing to say.

use crate::diag::{Check, Group};

/// A choice by size has nothing to say in some size.
pub static CHOICE_NOT_COVERED: Check =
    Check::error("choice-not-covered", Group::Words, include_str!("choice_not_covered.rs"));
