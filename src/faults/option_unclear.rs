//! It cannot be told what is left to the maker.
//!
//! ## Why it matters
//! Work that may be left out is played with and without, and what it alone needs is listed apart. For that it must be
//! clear which steps belong to it.
//!
//! ## Wrong
//! ````md
//! ## Press it flat {#flat or=pressing}
//!
//! Press it flat.
//! ````
//!
//! ## Right
//! ````md
//! ## Press it flat {#flat or=pressing}
//!
//! Press it flat.
//!
//! ## Press it over a ham {#ham or=pressing}
//!
//! Press it over a ham.
//!
//! ## Press it again {#again optional}
//!
//! Press it again.
//!
//! ## Let it cool {#cool of=again}
//!
//! Let it cool.
//! ````
//!
//! ## Limits
//! `optional` stands for work that may be left out, `or=NAME` for each of two or more ways of doing one thing, and
//! `of=ID` for what belongs to the step or part of that id. Each needs an id of its own but for `of=`. Where a part says
//! it, it holds for all of its steps.

use crate::diag::{Check, Group};

/// It cannot be told what is left to the maker.
pub static OPTION_UNCLEAR: Check =
    Check::error("option-unclear", Group::Words, include_str!("option_unclear.rs")).breaking();
