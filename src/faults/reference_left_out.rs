//! A reference, or work, leads to something that its own size does not have.
//!
//! ## Why it matters
//! The maker of that size is sent to a step, a piece or a notion that is not in her booklet.
//!
//! ## Wrong
//! ````md
//! ## Mark the pocket {#pocket for=large}
//!
//! Mark where the pocket goes.
//!
//! ## Check the marks {#check}
//!
//! Look over the marks of [](#pocket).
//! ````
//!
//! ## Right
//! ````md
//! ## Mark the pocket {#pocket for=large}
//!
//! Mark where the pocket goes.
//!
//! ## Check the marks {#check for=large}
//!
//! Look over the marks of [](#pocket).
//! ````
//!
//! ## Limits
//! Each size is looked at by itself. In a choice by size only the branch that is taken counts, so
//! `{large: … [](#pocket) … | else: …}` is in order. What work names is held to the same: a piece, a copy, a notion or a
//! fabric that the size does not have, also one that a shared part was handed. A piece whose copies a maker leaves out
//! with optional work is no fault. So is a question of `help:` that says `for=` and names a step which one of these sizes
//! does not have; without `for=` it goes where its step goes.

use crate::diag::{Check, Group};

/// A reference leads to something that its own size does not have.
pub static REFERENCE_LEFT_OUT: Check =
    Check::error("reference-left-out", Group::Words, include_str!("reference_left_out.rs"));
