//! A diagram holds a script.
//!
//! ## Why it matters
//! A printed page runs nothing, and a booklet that is handed to others must not carry anything that
//! could run on their machines.
//!
//! ## Wrong
//! ```svg
//! <rect class="right-side" x="5" y="4" width="30" height="20" onclick="show()"/>
//! ```
//!
//! ## Right
//! ```svg
//! <rect class="right-side" x="5" y="4" width="30" height="20"/>
//! ```
//!
//! ## Limits
//! Looks for `<script>` and for attributes that begin with `on`. Drawing programs add both when a
//! drawing was once made for the web.

use crate::diag::{Check, Group};

/// A diagram holds a script.
pub static SCRIPT_IN_FIGURE: Check =
    Check::error("script-in-figure", Group::Figures, include_str!("script_in_figure.rs"));
