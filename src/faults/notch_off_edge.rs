//! A notch lies beyond the end of its edge.
//!
//! ## Why it matters
//! The maker looks for the notch along the edge and does not find it, or snips it into the
//! neighbouring edge.
//!
//! ## Wrong
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     notches: [top 90 cm]
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Right
//! ```yaml
//! pieces:
//!   side:
//!     outline: {rectangle: [width + 2 * seam, height + 2 * seam]}
//!     allowance: {all: seam}
//!     notches: [top 5 cm]
//!     cut:
//!       outer: [front, back]
//! ```
//!
//! ## Limits
//! Each size is looked at by itself, since a place that is right in the large size may lie beyond
//! the small one. A notch is placed at the `centre`, at a share of the edge such as `1/3`, at a
//! length from its beginning, or at one `from end`. A notch on an edge that is not there is told by
//! `edge-unknown`.

use crate::diag::{Check, Group};

/// A notch lies beyond the end of its edge.
pub static NOTCH_OFF_EDGE: Check = Check::error("notch-off-edge", Group::Facts, include_str!("notch_off_edge.rs"));
