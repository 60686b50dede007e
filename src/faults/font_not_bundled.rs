//! A diagram asks for a font that the booklet does not carry.
//!
//! ## Why it matters
//! On another machine other letters would be put in its place, wider ones perhaps, and the words
//! run into the drawing.
//!
//! ## Wrong
//! ```svg
//! <text class="label" x="5" y="20" font-family="Country Script">Front</text>
//! ```
//!
//! ## Right
//! ```svg
//! <text class="label" x="5" y="20">Front</text>
//! ```
//!
//! ## Limits
//! The class `label` brings the font of the house with it. A font file in the booklet's own folder
//! `fonts` counts as bundled; mind its terms of use. `sans-serif` means the font of the house.

use crate::diag::{Check, Group};

/// A diagram asks for a font that the booklet does not carry.
pub static FONT_NOT_BUNDLED: Check =
    Check::error("font-not-bundled", Group::Figures, include_str!("font_not_bundled.rs"));
