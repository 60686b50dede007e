//! A diagram, or a shape in it, cannot be drawn.
//!
//! ## Why it matters
//! A shape that cannot be read is left out without a word. A diagram without its stitching line
//! shows the wrong seam.
//!
//! ## Wrong
//! ```svg
//! <path class="stitch" d="5 20 L 70 20"/>
//! ```
//!
//! ## Right
//! ```svg
//! <path class="stitch" d="M 5 20 L 70 20"/>
//! ```
//!
//! ## Limits
//! Looks at each diagram in each size, after its formulas are worked out: at paths, points,
//! lengths, transforms, the `viewBox`, parts that are used and not there, pictures over 300 kB
//! inside a drawing, and things that paper cannot show, such as films and animations. A step that is
//! to be drawn from its work (`draw:work`) is not drawn where its facts leave open what lies where, or
//! where its pieces no longer have the outline that was cut.

use crate::diag::{Check, Group};

/// A diagram, or a shape in it, cannot be drawn.
pub static FIGURE_NOT_DRAWABLE: Check =
    Check::error("figure-not-drawable", Group::Figures, include_str!("figure_not_drawable.rs"));
