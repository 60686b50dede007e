//! The figure beside a dimension line is not the length that the line has.
//!
//! ## Why it matters
//! A picture is believed before the words are read. A line as long as the cut piece with the finished length
//! beside it has the maker cut too short.
//!
//! ## Wrong
//! ```svg
//! <path class="dimension" d="M 5 20 h {width}"/>
//! <text class="label" x="5" y="25">{height}</text>
//! ```
//!
//! ## Right
//! ```svg
//! <path class="dimension" d="M 5 20 h {width}"/>
//! <text class="label" x="5" y="25">{width}</text>
//! ```
//!
//! ## Limits
//! Only for straight lines of the class `dimension` whose ends are formulas, and the figures right before or after
//! them in the file, in words that are nothing but lengths; drawn and stated length may differ by a two hundredth. Where no
//! words stand beside the line in the file, the nearest figure on the drawing is taken, if no other line is nearer to it and
//! none is as long as it says. A line that is drawn
//! with plain numbers, or slanting and by the names of its figure, may be foreshortened, broken off or out of scale, and is passed over, as is what stands in a group that is
//! scaled.

use crate::diag::{Check, Group, Home};

/// The figure beside a dimension line is not the length that the line has.
pub static LABEL_DIFFERS: Check =
    Check::error("label-differs", Group::Figures, include_str!("label_differs.rs")).waivable_in(Home::Words);
