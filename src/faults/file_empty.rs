//! The file of facts, or that of the questions, holds nothing.
//!
//! ## Why it matters
//! Without sizes, fabrics and pieces there is no booklet to print, and without questions no answers. An empty file is most often one
//! that was created and not saved.
//!
//! ## Wrong
//! ```yaml
//! # The facts come here.
//! ```
//!
//! ## Right
//! ```yaml
//! title: Tide Pouch
//! ```
//! …with the sizes and everything else below it.
//!
//! ## Limits
//! Looks at `booklet.yaml` and at the file under `help:`. An empty part is told by `heading-skips`.

use crate::diag::{Check, Group};

/// The file of facts, or that of the questions, holds nothing.
pub static FILE_EMPTY: Check = Check::error("file-empty", Group::Facts, include_str!("file_empty.rs"));
