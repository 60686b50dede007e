//! Two different things have one name.
//!
//! ## Why it matters
//! Steps and formulas call measurements, fabrics, notions, pieces and copies by name. If `lining`
//! is a fabric and a piece, a step that presses `lining` can be read in two ways.
//!
//! ## Wrong
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton}
//!   front: {name: Linen}
//! ```
//! …while `front` is also a copy of the piece `side`.
//!
//! ## Right
//! ```yaml
//! fabrics:
//!   outer: {name: Cotton}
//!   front_linen: {name: Linen}
//! pieces:
//!   patch: {outline: {rectangle: [3 cm, 3 cm]}, raw: all, cut: {front_linen: 1}}
//! ```
//! ````md
//! ## Make the patch {#patch}
//!
//! ```work
//! - cut: patch
//! - press: patch
//! ```
//!
//! Cut and press the patch.
//! ````
//!
//! ## Limits
//! Sizes and the ids of steps have names of their own and may repeat these. A name may recur where no
//! size has both things, as in two views. The first of the two keeps the name while the rest is checked.

use crate::diag::{Check, Group};

/// Two different things have one name.
pub static NAME_TWICE: Check = Check::error("name-twice", Group::Facts, include_str!("name_twice.rs"));
