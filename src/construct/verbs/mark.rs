//! Lines and points are marked on pieces.
//!
//! ## How to write it
//! Name pieces or edges; say what is marked in words behind.
//!
//! ```yaml
//! pieces:
//!   strap: {outline: {rectangle: [30 cm, 5 cm]}, allowance: seam, raw: all, cut: {outer: 1}}
//! ```
//! ````md
//! ## Make the strap {#strap}
//!
//! ```work
//! - cut: strap
//! - mark: [strap, the middle of the long side]
//! ```
//!
//! Mark the middle of the strap.
//! ````
//!
//! ## What it needs
//! The pieces are cut.
//!
//! ## What it changes
//! Nothing of the state: a mark shows in the drawing of the step.

use super::entry::{VerbEntry, nothing};
use crate::model::Verb;

/// The verb.
pub(super) static VERB: VerbEntry = VerbEntry::new(Verb::Mark, include_str!("mark.rs"), nothing);
