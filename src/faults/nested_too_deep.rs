//! Lists, quotations, brackets or formulas lie inside one another too deep.
//!
//! ## Why it matters
//! Nobody can follow a list in a list in a list with cloth in both hands, and a slip of the
//! keyboard is the likelier reason.
//!
//! ## Wrong
//! ```yaml
//! tools: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[Pins]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
//! ```
//!
//! ## Right
//! ```yaml
//! tools: [Sewing machine, Iron, Scissors, Pins]
//! ```
//!
//! ## Limits
//! Facts may nest 32 levels, lists and quotations in the words 24, choices 8, and no more than 100 formulas
//! may lean on one another in a chain. Brackets inside one formula are told by `out-of-range`.

use crate::diag::{Check, Group};

/// Lists, quotations, brackets or formulas lie inside one another too deep.
pub static NESTED_TOO_DEEP: Check =
    Check::error("nested-too-deep", Group::Facts, include_str!("nested_too_deep.rs")).unread();
