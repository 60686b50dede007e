//! A choice by size does not say which size a branch is for.
//!
//! ## Why it matters
//! A branch that belongs to no size cannot be printed in any, and some maker would read half a
//! sentence.
//!
//! ## Wrong
//! ````md
//! ## Pin the sides {#pin}
//!
//! Pin each side {small: in two places | three places}.
//! ````
//!
//! ## Right
//! ````md
//! ## Pin the sides {#pin}
//!
//! Pin each side {small: in two places | large: in three places}.
//! ````
//!
//! ## Limits
//! A branch begins with its sizes, or with `else`, and a colon. In braces without a choice, a bar
//! comes before a unit, `words`, `first` or `second`: `{width | cm}`.

use crate::diag::{Check, Group};

/// A choice by size does not say which size a branch is for.
pub static CHOICE_UNREADABLE: Check =
    Check::error("choice-unreadable", Group::Words, include_str!("choice_unreadable.rs")).breaking();
