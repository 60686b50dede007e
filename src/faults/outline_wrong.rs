//! The outline of a piece cannot be cut as it is drawn.
//!
//! ## Why it matters
//! An outline that stays open, crosses itself or is eaten up by its own allowance cannot be laid on
//! cloth, and no length on it can be trusted.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     outline:
//!       path:
//!         - start: [0 cm, 0 cm]
//!         - top: [width + 2 * seam, 0 cm]
//!         - right: [width + 2 * seam, height + 2 * seam]
//!         - bottom: [0 cm, height + 2 * seam]
//!     allowance: {all: seam}
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     outline:
//!       path:
//!         - start: [0 cm, 0 cm]
//!         - top: [width + 2 * seam, 0 cm]
//!         - right: [width + 2 * seam, height + 2 * seam]
//!         - bottom: [0 cm, height + 2 * seam]
//!         - left: close
//!     allowance: {all: seam}
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Limits
//! Each size is built by itself. Told here are outlines that are not closed or cross themselves,
//! two edges with one name, edges that are named by `allowance` or `fold` and not there, folds that
//! are not straight, allowances below nothing or too wide for the piece, and drawings that
//! are moved by a transform that cannot be read, state no true size or lack the `id`.

use crate::diag::{Check, Group};

/// The outline of a piece cannot be cut as it is drawn.
pub static OUTLINE_WRONG: Check =
    Check::error("outline-wrong", Group::Facts, include_str!("outline_wrong.rs")).breaking();
